"""The log that the pane can show: what the component did, and what the engine said to its stderr."""

import logging
from logging.handlers import RotatingFileHandler

from .places import in_profile

_LARGEST = 256 * 1024


def log_path():
    """The log file of this user."""
    return in_profile("wandcount.log")


def _opened():
    try:
        file = RotatingFileHandler(log_path(), maxBytes=_LARGEST, backupCount=1, encoding="utf-8")
    except OSError:
        return logging.NullHandler()
    file.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(message)s"))
    return file


class _InProfile(logging.Handler):
    """Opens the file with the first line: while the extension is being registered there is no profile yet.

    Where it cannot be opened nothing is written down, and all else goes on.
    """

    _file = None

    def emit(self, record):
        if not self._file:
            self._file = _opened()
        self._file.emit(record)


log = logging.getLogger("wandcount")
log.setLevel(logging.INFO)
log.propagate = False
log.addHandler(_InProfile())

"""Workbooks that were saved by an office without this extension.

Such an office writes the names of functions that it does not know in small letters. In an .xlsx it keeps last values,
also of formulas that made something else of the error it saw, such as IFERROR: those would stay as they are. Seen in
7.4.
"""

import re
import zipfile

import uno

from .places import NAMES

_SHEET = re.compile(r"xl/worksheets/[^/]+\.xml")
_UNKNOWN = re.compile(rf"\b{NAMES['functions'].lower()}\.[a-z]+\(".encode())


def saved_elsewhere(url):
    """Whether formulas of an .xlsx file stand in it as an office without the extension writes them."""
    if not url.startswith("file:"):
        return False
    try:
        with zipfile.ZipFile(uno.fileUrlToSystemPath(url)) as file:
            sheets = [name for name in file.namelist() if _SHEET.fullmatch(name)]
            return any(_UNKNOWN.search(file.read(name)) for name in sheets)
    except (OSError, RuntimeError, zipfile.BadZipFile):
        # No zip, or one under a password: then its last values stay until something is computed.
        return False

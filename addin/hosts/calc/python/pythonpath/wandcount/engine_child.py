"""One running engine: one JSON message a line in, one a line out."""

import json
import os
import subprocess
import sys
import threading

from .log import log
from .places import packaged

_encoded = json.JSONEncoder(separators=(",", ":"), allow_nan=False).encode


class Ended(Exception):
    """The engine is gone."""


class Silent(Exception):
    """The engine did not answer in time."""


def _environment():
    # The office's own libraries and options are not meant for other programs.
    return {k: v for k, v in os.environ.items() if k not in ("LD_LIBRARY_PATH", "NODE_OPTIONS")}


def start_program(words):
    """A program with pipes to its stdin, stdout and stderr, and no window of its own."""
    flags = subprocess.CREATE_NO_WINDOW if sys.platform == "win32" else 0
    return subprocess.Popen(
        words,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=_environment(),
        creationflags=flags,
    )


class EngineChild:
    """What every engine does, whoever listens to it. A thread of its own follows it from its start to its end."""

    def __init__(self, node, on_message, on_end):
        self.ready = threading.Event()
        self.gone = threading.Event()
        self.killed = False
        self._on_message = on_message
        self._on_end = on_end
        self._process = start_program([node, packaged("engine.cjs")])
        log.info("engine %d started with %s", self._process.pid, node)
        threading.Thread(target=self._follow, daemon=True).start()
        threading.Thread(target=self._read_errors, daemon=True).start()

    @property
    def running(self):
        return self._process.poll() is None

    @staticmethod
    def line_of(message):
        """A message as the engine reads it."""
        return _encoded(message).encode("ascii") + b"\n"

    def write(self, line):
        """Writes a line, which takes until the engine has read what is more than the pipe holds; by one thread at a time."""
        try:
            self._process.stdin.write(line)
            self._process.stdin.flush()
        except (OSError, ValueError):
            raise Ended() from None

    def kill(self):
        self.killed = True
        self._process.kill()

    def _listen(self):
        """Hears the engine until it has no more to say."""
        raise NotImplementedError

    def _closed(self):
        """Lets go whoever waits."""

    def _next_message(self):
        """What the engine says next; None where it has ended or says what is no message."""
        line = self._process.stdout.readline()
        if not line:
            return None
        try:
            return json.loads(line)
        except ValueError:
            log.error("engine %d said what is no message: %r", self._process.pid, line[:200])
            return None

    def _is_ready(self, message):
        log.info("engine %d ready, node %s", self._process.pid, message["ready"])
        self.ready.set()
        self._on_message(self, message)

    def _follow(self):
        self._listen()
        self._process.kill()
        log.info("engine %d ended with %s", self._process.pid, self._process.wait())
        # Whoever waits may ask at once why: the reason is there by then.
        self._on_end(self)
        self.gone.set()
        self._closed()

    def _read_errors(self):
        for line in self._process.stderr:
            log.warning("engine %d: %s", self._process.pid, line.decode("utf-8", "replace").rstrip())

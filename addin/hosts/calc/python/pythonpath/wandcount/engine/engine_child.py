"""One engine from its start to its end: one JSON message a line in, one a line out."""

import json
import threading
import time
from collections import namedtuple

from ..office.log import log
from ..office.places import NAMES, packaged
from .engine_absent import EngineAbsent
from .finding_node import candidates, chosen_node, is_program
from .started_program import end_program, start_program

# A cold disk may be slow to bring up node; after this the next program is tried, s.
_LONGEST_START = 20.0

_encoded = json.JSONEncoder(separators=(",", ":"), allow_nan=False).encode

Node = namedtuple("Node", "path version")


class Ended(Exception):
    """The engine is gone."""


class NotReady(Exception):
    """The engine is still starting."""


class Silent(Exception):
    """The engine did not answer in time."""


class EngineChild:
    """What every engine does, whoever listens to it.

    A thread of its own brings it up, with the first node program that can run it, and follows it to its end: nobody
    else is held by a program that is slow to start or to end.
    """

    def __init__(self, on_ready, on_message, on_end, on_gone):
        self.ready = threading.Event()
        self.gone = threading.Event()
        self.killed = False
        # The program that runs it.
        self.node = None
        # Why no program runs it, or why not the one that the user chose.
        self.unfit = None
        self._process = None
        self._on_ready = on_ready
        self._on_message = on_message
        self._on_end = on_end
        self._on_gone = on_gone
        threading.Thread(target=self._follow, daemon=True).start()

    @staticmethod
    def line_of(message):
        """A message as the engine reads it; ValueError for what JSON cannot tell."""
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
        self._end()

    def _end(self):
        if self._process:
            end_program(self._process)

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
            message = json.loads(line)
            if isinstance(message, dict):
                return message
        except ValueError:
            pass
        log.error("engine %d said what is no message: %r", self._process.pid, line[:200])
        return None

    def _follow(self):
        try:
            self._bring_up()
            self.ready.set()
            self._on_ready(self)
            self._listen()
        except EngineAbsent as absent:
            self.unfit = absent
        except Exception:
            log.exception("the engine's thread")
        try:
            self._end()
            if self._process:
                log.info("engine %d ended with %s", self._process.pid, self._process.wait())
        except Exception:
            log.exception("the engine's end")
        # Whoever waits may ask at once why: the reason is there by then.
        self._on_end(self)
        self.gone.set()
        # First of all it is gone; then whoever waited for it may look what is instead.
        self._on_gone()
        self._closed()

    def _bring_up(self):
        first = None
        for path in candidates():
            try:
                version = self._started(path)
            except EngineAbsent as absent:
                log.error("%s does not run the engine: %s %s", path, absent.reason, absent.version)
                first = first or absent
                self._end()
                if self.killed:
                    break
                continue
            self.node = Node(path, version)
            if first and first.path == chosen_node():
                self.unfit = first
            return
        raise first or EngineAbsent("noNode")

    def _started(self, path):
        """The version of the program, where it is new enough and runs the engine; EngineAbsent where it does not."""
        if not is_program(path):
            raise EngineAbsent("cannotRun", path)
        try:
            process = start_program([path, packaged("start.cjs")])
        except OSError as error:
            log.error("%s", error)
            raise EngineAbsent("cannotRun", path) from None
        self._process = process
        log.info("engine %d started with %s", process.pid, path)
        if self.killed:
            self._end()
        threading.Thread(target=self._read_errors, args=(process,), daemon=True).start()
        until = time.monotonic() + _LONGEST_START
        late = threading.Timer(_LONGEST_START, end_program, (process,))
        late.daemon = True
        late.start()
        message = self._next_message()
        late.cancel()
        if message is None and time.monotonic() >= until:
            raise EngineAbsent("tooSlow", path)
        try:
            version = message["ready"]
            new_enough = int(version.split(".")[0]) >= NAMES["leastNode"]
        except (AttributeError, KeyError, TypeError, ValueError):
            raise EngineAbsent("cannotRun", path) from None
        if not new_enough:
            raise EngineAbsent("oldNode", path, version)
        log.info("engine %d ready, node %s", process.pid, version)
        return version

    @staticmethod
    def _read_errors(process):
        for line in process.stderr:
            log.warning("engine %d: %s", process.pid, line.decode("utf-8", "replace").rstrip())

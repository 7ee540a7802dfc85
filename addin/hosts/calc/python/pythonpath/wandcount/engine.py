"""Keeps an engine running: starts it when first needed, again when it died, and not at once when it hangs."""

import collections
import subprocess
import threading
import time

from .engine_child import Ended, Silent, start_program
from .finding_node import find_node
from .log import log
from .office_end import at_office_end

_OLDEST_NODE = 20

# After a hang nobody asks again for so long, so that a thousand cells wait once and not a thousand times.
_REST = 5.0
# An engine that ends this often in a minute is left alone for half of one.
_MOST_STARTS = 5
_LONG_REST = 30.0
# Looking for node again and again costs more than it finds.
_LOOK_AGAIN = 3.0
# A cold disk may be slow to bring up node; after this it counts as hung.
_LONGEST_START = 20.0
# How long the reason of an engine's end may take to find out.
_LONGEST_END = 3.0
# A call that hangs every time must not freeze Calc every few seconds.
_BETWEEN_REVIVALS = 600.0


class EngineAbsent(Exception):
    """Nobody answers; `reason` is a key of the words under "absent"."""

    def __init__(self, reason, detail=""):
        super().__init__(reason)
        self.reason = reason
        self.detail = detail


def _version_of(node):
    program = start_program([node, "--version"])
    try:
        said, _ = program.communicate(timeout=2)
    except subprocess.TimeoutExpired:
        program.kill()
        return None
    return said.decode("ascii", "replace").strip()


class Engine:
    """One engine and its rules. `on_back` is told when it answers again after it could not.

    `child` makes a running engine: an AnsweringChild for one that is asked, a TalkingChild for one that messages go to.
    """

    def __init__(self, child, on_message=None, on_back=None, on_end=None):
        self._start_child = child
        self._on_message = on_message or (lambda message: None)
        self._on_back = on_back or (lambda: None)
        self._on_end = on_end or (lambda: None)
        self._lock = threading.Lock()
        self._child = None
        self._node = None
        self._starts = collections.deque(maxlen=_MOST_STARTS)
        self._absent = None
        self._absent_until = 0.0
        self._revived = -_BETWEEN_REVIVALS
        # None until the first start asks to be told of the office's end; True from that end on.
        self._over = None
        self.missed = False

    @property
    def absent(self):
        """Why nobody answers now, or None."""
        return self._absent if time.monotonic() < self._absent_until else None

    def ask(self, message, seconds):
        """The engine's answer; EngineAbsent where there is none within the seconds."""
        try:
            return self._ask(message, time.monotonic() + seconds)
        except EngineAbsent:
            self.missed = True
            raise

    def tell(self, message):
        """Sends a message; EngineAbsent where nobody can take it."""
        self._given(lambda child: child.tell(message))

    def send(self, message, heard):
        """Sends a message; `heard` is called on another thread, with the answer or, where the engine ended, None."""
        self._given(lambda child: child.send(message, heard))

    def start(self):
        """Starts the engine where it is not running; EngineAbsent where it cannot."""
        self._running()

    def try_again(self):
        """Forgets what went wrong, as the user asked."""
        with self._lock:
            self._absent_until = 0.0
            self._starts.clear()
            self._revived = -_BETWEEN_REVIVALS

    def stop(self):
        """Ends the engine, as after a Stop that it does not hear."""
        child = self._child
        if child:
            child.kill()

    def _office_ends(self):
        """An engine that hangs or computes without end would not see the office's end."""
        with self._lock:
            self._over = True
            if self._child:
                self._child.kill()

    def _ask(self, message, until):
        def ask(child):
            try:
                return child.ask(message, max(0.0, until - time.monotonic()))
            except Silent:
                raise self._silent(child) from None

        return self._given(ask)

    def _given(self, action):
        """The action done with a running engine, another one where it ended meanwhile. There are only so many."""
        while True:
            child = self._running()
            try:
                return action(child)
            except Ended:
                child.gone.wait(_LONGEST_END)

    def _running(self):
        with self._lock:
            if self._child and self._child.running:
                if self._absent and time.monotonic() < self._absent_until:
                    raise self._absent
                return self._child
            now = time.monotonic()
            if now < self._absent_until:
                raise self._absent
            if len(self._starts) == _MOST_STARTS and now - self._starts[0] < 60:
                raise self._rest("keepsEnding", _LONG_REST)
            if self._over:
                raise self._rest("keepsEnding", _LONG_REST)
            if self._over is None:
                self._over = False
                at_office_end(self._office_ends)
            self._node = find_node()
            if not self._node:
                raise self._rest("noNode", _LOOK_AGAIN)
            try:
                self._child = self._start_child(self._node, self._take, self._ended)
            except OSError as error:
                log.error("%s cannot be started: %s", self._node, error)
                raise self._rest("cannotStart", _LOOK_AGAIN, self._node) from None
            self._starts.append(now)
            return self._child

    def _look_at_end(self, child):
        """An engine that ended before it was ready may be too old a node; nothing else tells so."""
        version = _version_of(self._node)
        log.error("%s (%s) ended before it was ready", self._node, version)
        if version is None or not version.startswith("v"):
            self._rest("cannotStart", _LONG_REST, self._node)
        elif int(version[1:].split(".")[0]) < _OLDEST_NODE:
            self._rest("oldNode", _LONG_REST, version)

    def _silent(self, child):
        if not child.ready.is_set():
            threading.Thread(target=self._wait_for_start, args=(child,), daemon=True).start()
            return self._rest("starting", _LONGEST_START)
        log.error("no answer in time")
        absent = self._rest("hung", _REST)
        child.kill()
        now = time.monotonic()
        if now - self._revived >= _BETWEEN_REVIVALS:
            self._revived = now
            threading.Timer(_REST, self._revive).start()
        return absent

    def _wait_for_start(self, child):
        if child.ready.wait(_LONGEST_START):
            self._absent_until = 0.0
        else:
            self._rest("hung", _REST)
            child.kill()

    def _revive(self):
        try:
            self.start()
        except EngineAbsent as absent:
            log.error("not back: %s", absent.reason)

    def _rest(self, reason, seconds, detail=""):
        self._absent = EngineAbsent(reason, detail)
        self._absent_until = time.monotonic() + seconds
        return self._absent

    def _take(self, child, message):
        if "ready" in message:
            self._absent_until = 0.0
            if self.missed:
                self.missed = False
                self._on_back()
        else:
            self._on_message(message)

    def _ended(self, child):
        # One that ends at once may do so before it is known here.
        with self._lock:
            current = child is self._child and not self._over
        if not current:
            return
        if not child.ready.is_set() and not child.killed:
            self._look_at_end(child)
        self._on_end()

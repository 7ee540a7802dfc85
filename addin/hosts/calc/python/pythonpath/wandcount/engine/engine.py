"""Keeps an engine running: starts it when first needed, again when it died, and not at once when it hangs."""

import collections
import threading
import time

from ..office.log import log
from ..office.office_end import at_office_end
from .engine_absent import EngineAbsent
from .engine_child import Ended, NotReady, Silent

# After a hang nobody asks again for so long, so that a thousand cells wait once and not a thousand times.
_REST = 5.0
# An engine that ends this often in a minute is left alone for half of one, as is one that no program runs.
_MOST_STARTS = 5
_LONG_REST = 30.0
# Looking for node again and again costs more than it finds.
_LOOK_AGAIN = 3.0
# A call that hangs every time must not freeze Calc every few seconds: one that hangs again soon is left alone so long.
_BETWEEN_REVIVALS = 600.0


class Engine:
    """One engine and its rules. `on_back` is told when it answers again after it could not, `on_gone` of its end.

    `child` makes an engine: an AnsweringChild for one that is asked, a TalkingChild for one that messages go to.
    """

    def __init__(self, child, on_message=None, on_back=None, on_gone=None):
        self._start_child = child
        self._on_message = on_message or (lambda child, message: None)
        self._on_back = on_back or (lambda: None)
        self._on_gone = on_gone or (lambda: None)
        self._lock = threading.Lock()
        self._child = None
        self._starts = collections.deque(maxlen=_MOST_STARTS)
        # The first reason why nobody answers, until somebody does; nothing is started before the time.
        self._absent = None
        self._absent_until = 0.0
        self._revived = -_BETWEEN_REVIVALS
        # None until the first start asks to be told of the office's end; True from that end on.
        self._over = None
        self._missed = False

    @property
    def absent(self):
        """Why nobody answers now, an EngineAbsent or None."""
        return self._absent

    @property
    def running(self):
        """The child that runs or is brought up, which tells one engine from the next; None where none does."""
        child = self._child
        return None if child is None or child.gone.is_set() else child

    @property
    def starting(self):
        """True while a node program is brought up."""
        child = self._child
        return child is not None and not child.ready.is_set() and not child.gone.is_set()

    @property
    def passed_over(self):
        """What is to be told of the user's own node program where another one runs the engine, or None."""
        child = self._child
        if child is None or not child.ready.is_set() or child.unfit is None:
            return None
        return child.unfit.words_of_choice(child.node)

    def ask(self, message, seconds):
        """The engine's answer; EngineAbsent where there is none within the seconds."""
        try:
            return self._ask(message, time.monotonic() + seconds)
        except EngineAbsent:
            self._missed = True
            if self._absent is None:
                # It came up while nobody was known to have missed it.
                self._tell_back()
            raise

    def tell(self, message):
        """Sends a message, and returns the child that has it; EngineAbsent where nobody can take it."""

        def tell(child):
            child.tell(message)
            return child

        return self._given(tell)

    def start(self):
        """Starts the engine where it is not running; EngineAbsent where it may not."""
        self._running()

    def try_again(self):
        """Forgets what went wrong, as the user asked."""
        with self._lock:
            self._absent = None
            self._absent_until = 0.0
            self._starts.clear()
            self._revived = -_BETWEEN_REVIVALS

    def renew(self):
        """Ends the engine, so that the next one runs with the program that the user chose."""
        self.try_again()
        self.stop()

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
            absent = self._absent
            if absent and not child.ready.is_set():
                # One start was waited for, and Calc was held; the cells follow when it is done.
                raise absent.with_traceback(None)
            try:
                return child.ask(message, max(0.0, until - time.monotonic()))
            except NotReady:
                raise self._still_starting(child) from None
            except Silent:
                raise self._hung(child) from None

        return self._given(ask, until)

    def _given(self, action, until=0.0):
        """The action done with a running engine, another one where it ended meanwhile. There are only so many."""
        while True:
            child = self._running()
            try:
                return action(child)
            except Ended:
                if not child.gone.wait(max(0.0, until - time.monotonic())):
                    raise self._hung(child) from None

    def _running(self):
        with self._lock:
            now = time.monotonic()
            if self._absent and now < self._absent_until:
                raise self._absent.with_traceback(None)
            if self._child and not self._child.gone.is_set():
                return self._child
            often = len(self._starts) == _MOST_STARTS and now - self._starts[0] < 60
            if often or self._over:
                raise self._rest(EngineAbsent("keepsEnding"), _LONG_REST)
            if self._over is None:
                self._over = False
                at_office_end(self._office_ends)
            self._child = self._start_child(self._ready, self._on_message, self._ended, self._gone)
            return self._child

    def _still_starting(self, child):
        absent = EngineAbsent("starting")
        with self._lock:
            if not child.ready.is_set():
                self._absent = self._absent or absent
        return absent

    def _hung(self, child):
        log.error("no answer in time")
        now = time.monotonic()
        again = now - self._revived < _BETWEEN_REVIVALS
        with self._lock:
            absent = self._rest(EngineAbsent("hung"), _BETWEEN_REVIVALS if again else _REST)
        child.kill()
        if not again:
            self._revived = now
            threading.Timer(_REST, self._revive).start()
        return absent

    def _revive(self):
        try:
            self.start()
        except EngineAbsent as absent:
            log.error("not back: %s", absent.reason)

    def _rest(self, absent, seconds):
        self._absent = absent
        self._absent_until = time.monotonic() + seconds
        return absent

    def _ready(self, child):
        with self._lock:
            if child is self._child:
                self._starts.append(time.monotonic())
                self._absent = None
                self._absent_until = 0.0
        self._tell_back()

    def _tell_back(self):
        if self._missed:
            self._missed = False
            self._on_back()

    def _ended(self, child):
        # One that ends at once may do so before it is known here.
        with self._lock:
            if child is not self._child or self._over:
                return
            if not child.ready.is_set() and not child.killed:
                absent = child.unfit or EngineAbsent("keepsEnding")
                self._rest(absent, _LOOK_AGAIN if absent.reason == "noNode" else _LONG_REST)

    def _gone(self):
        if not self._over:
            self._on_gone()

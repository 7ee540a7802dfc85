"""The pane of each document: carries events to the engine, its questions to the document, its views to the panels."""

import contextlib
import threading
import time

import unohelper
from com.sun.star.util import XModifyListener

from .document.refused import Refused
from .engine.engine import Engine
from .engine.engine_absent import EngineAbsent
from .engine.engine_child import Ended
from .engine.talking_child import TalkingChild
from .office.log import log
from .office.main_thread import later
from .office.office_settings import user_locale
from .panel.absent_view import absent_view, told_above
from .requests import answer

# An engine that says nothing for so long while somebody waits for it hangs, s.
_LONGEST_SILENCE = 20.0

# After so long the user is told that the engine is still starting, s.
_PATIENCE = 2.0

# Is done after whatever the pane is doing, and changes nothing.
WAITS_ITS_TURN = {"kind": "selected", "sheet": "", "row": 0, "column": 0}

# What happens without the user meaning the pane.
_TELLS_ITSELF = ("workbookChanged", "selected")

# Questions that leave the document as it is: what changes while they are answered, the user changed.
_ONLY_LOOKS = ("outline", "read", "selected", "compute")


class _Modified(unohelper.Base, XModifyListener):
    def __init__(self, session):
        self._session = session

    def modified(self, event):
        self._session.modified()

    def disposing(self, event):
        self._session.close()


class Session:
    """One document's pane, whether a panel shows it or a script asks for it. Lives on the main thread."""

    def __init__(self, document):
        self.document = document
        self.key = document.RuntimeUID
        self.view = None
        self.absent = None
        # True from an engine's end until the user goes on.
        self.restarted = False
        self._panels = []
        self._answering = False
        self._writing = 0
        self._told = False
        # The engine that the pane is open in.
        self._opened_in = None
        document.addModifyListener(_Modified(self))

    def open(self):
        """Opens the pane in the engine where it is not open; what keeps it from that is kept in `absent`."""
        if self._opened_in is not None and self._opened_in is not _engine.running:
            # Where no engine has shown anything yet, nothing typed is lost.
            self.restarted = self.restarted or self.view is not None
            self._opened_in = None
        if self._opened_in is None:
            self._opened_in = self._try(
                lambda: _engine.tell({"doc": self.key, "open": {"locale": user_locale()}})
            )
            if self._opened_in and _engine.starting:
                threading.Timer(_PATIENCE, lambda: later(self._tell_starting)).start()

    def _tell_starting(self):
        if self._opened_in and not self.absent and _engine.starting:
            self.absent = EngineAbsent("starting")
            self._show()

    def send(self, event, done=None):
        """Tells the engine what the user did; `done` is called on the main thread when all of it is done."""
        if event["kind"] not in _TELLS_ITSELF:
            self.restarted = False

        def heard(reply):
            _waiting.discard(heard)
            if done:
                later(done)

        _waiting.add(heard)
        while True:
            self.open()
            if self._opened_in is None:
                heard(None)
                return
            # Another engine would not know the pane; there are only so many starts.
            with contextlib.suppress(Ended):
                self._opened_in.send({"doc": self.key, "event": event}, heard)
                _watch_silence()
                return

    def send_after_reading(self, event):
        """Presses a button whatever the pane is doing: one that is still reading would not take it."""
        self.send(WAITS_ITS_TURN, lambda: self.send(event))

    def add_panel(self, panel):
        self._panels.append(panel)
        self.open()
        panel.show(self)

    def remove_panel(self, panel):
        self._panels.remove(panel)

    def modified(self):
        """The user's own edits are told once, when the office is next idle."""
        if self._writing or self._told or not self._opened_in:
            return
        self._told = True
        later(self._tell_modified)

    def _tell_modified(self):
        self._told = False
        if self._opened_in:
            self.send({"kind": "workbookChanged"})

    def close(self):
        _sessions.pop(self.key, None)
        if self._opened_in is not None and self._opened_in is _engine.running:
            self._try(lambda: _engine.tell({"doc": self.key, "close": True}))

    def try_again(self):
        """As the user asked."""
        self.absent = None
        self.open()
        self._show()

    def show(self, view):
        self.view = view
        if self._opened_in:
            self.absent = None
        self._show()

    @property
    def shown(self):
        """What panels show; None before there is anything."""
        if self.absent:
            return absent_view(self.absent)
        return self.view and told_above(self.view, self.restarted, _engine.passed_over)

    def _show(self):
        for panel in list(self._panels):
            panel.show(self)

    def _try(self, action):
        """What the action returns where the engine took it, None where it did not."""
        try:
            taken = action()
        except EngineAbsent as absent:
            self._opened_in = None
            self.absent = absent
            self._show()
            return None
        self.absent = None
        return taken

    @property
    def busy(self):
        """True while the office itself works on what the engine asked."""
        return self._answering or self._writing > 0

    def answer(self, message):
        """Does what the engine asked."""
        writes = message["what"] not in _ONLY_LOOKS
        self._answering = True
        self._writing += writes
        try:
            reply = {"answer": message["ask"], "value": answer(self.document, message)}
        except Refused as refused:
            reply = {"answer": message["ask"], "refused": refused.reason}
        except Exception as error:
            log.exception("%s", message["what"])
            reply = {"answer": message["ask"], "failed": str(error) or type(error).__name__}
        self._answering = False
        if writes:
            # The document tells of what was written only when the office is idle again.
            later(self._written)
        try:
            self._try(lambda: _engine.tell(reply))
        except ValueError as error:
            log.exception("%s", message["what"])
            self._try(lambda: _engine.tell({"answer": message["ask"], "failed": str(error)}))

    def _written(self):
        self._writing -= 1


_sessions = {}
_waiting = set()
_heard_at = time.monotonic()
_watching = threading.Lock()


def session_of(document):
    """The document's pane, made when first asked for."""
    key = document.RuntimeUID
    if key not in _sessions:
        _sessions[key] = Session(document)
    return _sessions[key]


def session_of_key(key):
    """The pane of a document's RuntimeUID, which somebody has asked for before."""
    return _sessions[key]


def try_again():
    """Opens every pane anew that is not open, as the user asked."""
    _engine.try_again()
    for session in list(_sessions.values()):
        session.try_again()


def use_chosen_node():
    """Ends the engine; the panes go on with the next one, which runs with the program that the user chose."""
    _engine.renew()
    try_again()


def _take(message):
    global _heard_at
    _heard_at = time.monotonic()
    later(lambda: _deliver(message))


def _deliver(message):
    session = _sessions.get(message.get("doc"))
    if session and "view" in message:
        session.show(message["view"])
    elif session and "ask" in message:
        session.answer(message)
    elif "ask" in message:
        _refuse(message)


def _refuse(message):
    """The document was closed meanwhile. Who asks must learn it, or waits for ever."""
    with contextlib.suppress(EngineAbsent):
        _engine.tell({"answer": message["ask"], "refused": "closed"})


def _watch_silence():
    """One watch at a time, for as long as somebody waits."""
    global _heard_at
    if not _watching.acquire(blocking=False):
        return
    _heard_at = time.monotonic()

    def watch():
        global _heard_at
        try:
            while _waiting:
                time.sleep(0.5)
                # The engine has nothing to say meanwhile.
                if _engine.starting or any(session.busy for session in list(_sessions.values())):
                    _heard_at = time.monotonic()
                elif time.monotonic() - _heard_at > _LONGEST_SILENCE:
                    log.error("the pane's engine says nothing")
                    _engine.stop()
                    break
        finally:
            _watching.release()
        # Somebody may have sent something between the last look and the release.
        if _waiting:
            _watch_silence()

    threading.Thread(target=watch, daemon=True).start()


def _engine_gone():
    def go_on():
        for session in list(_sessions.values()):
            session.open()

    later(go_on)


_engine = Engine(TalkingChild, on_message=_take, on_gone=_engine_gone)

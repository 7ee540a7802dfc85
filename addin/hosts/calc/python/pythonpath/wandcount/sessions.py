"""The pane of each document: carries events to the engine, its questions to the document, its views to the panels."""

import contextlib
import threading

import unohelper
from com.sun.star.util import XModifyListener

from .document.refused import Refused
from .engine.engine import Engine
from .engine.engine_absent import EngineAbsent
from .engine.engine_child import Ended
from .engine.silence import Silence
from .engine.talking_child import TalkingChild
from .office.log import log
from .office.main_thread import later
from .office.office_settings import user_locale
from .panel.absent_view import absent_view, told_above
from .requests import answer
from .wire import REQUESTS, View, read

# After so long the user is told that the engine is still starting, s.
_PATIENCE = 2.0

# Is done after whatever the pane is doing, and changes nothing.
_WAITS_ITS_TURN = {"kind": "selected", "sheet": "", "row": 0, "column": 0}

# What happens without the user meaning the pane.
_TELLS_ITSELF = ("workbookChanged", "selected")

# Questions that leave the document as it is: what changes while they are answered, the user changed.
_ONLY_LOOKS = ("read", "selected", "compute")


class _Modified(unohelper.Base, XModifyListener):
    def __init__(self, session):
        self._session = session

    def modified(self, event):
        self._session.modified()

    def disposing(self, event):
        self._session.close()


class Session:
    """One document's pane, whether a panel shows it or not. Lives on the main thread."""

    def __init__(self, document):
        self.document = document
        self.key = document.RuntimeUID
        self.view = None
        self.absent = None
        # True from an engine's end until the user goes on.
        self.restarted = False
        self._panels = []
        self._writing = 0
        self._told = False
        # The engine that the pane is open in, and the one that the view is of.
        self._opened_in = None
        self._shown_by = None
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

        def heard(reply):
            _silence.no_longer(heard)
            if done:
                later(done)

        taken = False
        try:
            taken = self._hand_over(event, heard)
        finally:
            if not taken:
                heard(None)

    def _hand_over(self, event, heard):
        """True where the engine took it."""
        meant = event["kind"] not in _TELLS_ITSELF
        while True:
            self.open()
            child = self._opened_in
            if child is None:
                return False
            # What the user pressed was shown by an engine that ended, and the next one may not mean the same by it.
            if meant and self._shown_by not in (None, child):
                return False
            _silence.expect(heard)
            # There are only so many starts.
            with contextlib.suppress(Ended):
                child.send({"doc": self.key, "event": event}, heard)
                if meant:
                    self.restarted = False
                _silence.watch()
                return True

    def send_after_reading(self, event):
        """Presses a button whatever the pane is doing: one that is still reading would not take it."""
        self.send(_WAITS_ITS_TURN, lambda: self.send(event))

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

    def show(self, view, child):
        if child is not self._opened_in:
            return
        self.view = view
        self._shown_by = child
        self.absent = None
        self._show()

    @property
    def shown(self):
        """What panels are to show; None before the engine has shown anything."""
        if self.absent:
            return absent_view(self.absent)
        if self._shown_by is not self._opened_in:
            return None
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
    def writing(self):
        """True until the office is idle again after a change that the engine asked for."""
        return self._writing > 0

    def answer(self, message):
        """What the engine is to be told of what it asked."""
        writes = message["request"]["what"] not in _ONLY_LOOKS
        self._writing += writes
        try:
            request = read(REQUESTS, message["request"])
            reply = {"answer": message["ask"], "value": answer(self.document, request)}
        except Refused as refused:
            reply = {"answer": message["ask"], "refused": refused.reason}
        except Exception as error:
            log.exception("%s", message["request"]["what"])
            reply = {"answer": message["ask"], "failed": str(error) or type(error).__name__}
        if writes:
            # The document tells of what was written only when the office is idle again.
            later(self._written)
        return reply

    def _written(self):
        self._writing -= 1


_sessions = {}
# What engines asked and have not been told.
_asked = set()


def session_of(document):
    """The document's pane, made when first asked for."""
    key = document.RuntimeUID
    if key not in _sessions:
        _sessions[key] = Session(document)
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


def _take(child, message):
    _silence.heard()
    if "ask" in message:
        _asked.add((child, message["ask"]))
    later(lambda: _deliver(child, message))


def _deliver(child, message):
    session = _sessions.get(message.get("doc"))
    if "ask" in message:
        try:
            _answer(child, session, message)
        finally:
            _asked.discard((child, message["ask"]))
    elif session and "view" in message:
        session.show(read(View, message["view"]), child)


def _answer(child, session, message):
    """An engine that asks must be told, or it waits for ever; one that ended meanwhile has no more to wait for."""
    # The document may have been closed meanwhile.
    reply = session.answer(message) if session else {"answer": message["ask"], "refused": "closed"}
    with contextlib.suppress(Ended):
        try:
            child.tell(reply)
        except ValueError as error:
            log.exception("%s", message["request"]["what"])
            child.tell({"answer": message["ask"], "failed": str(error)})


def _excused():
    """True while the engine itself waits: to be brought up, for an answer, for the office after a change."""
    return _engine.starting or _asked or any(one.writing for one in list(_sessions.values()))


def _hangs():
    log.error("the pane's engine says nothing")
    _engine.stop()


def _engine_gone():
    def go_on():
        for session in list(_sessions.values()):
            session.open()

    later(go_on)


_engine = Engine(TalkingChild, on_message=_take, on_gone=_engine_gone)
_silence = Silence(_excused, _hangs)

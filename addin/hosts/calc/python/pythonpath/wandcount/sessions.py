"""The pane of each document: carries events to the engine, its questions to the document, its views to the panels."""

import threading

import uno
import unohelper
from com.sun.star.document import XDocumentEventListener
from com.sun.star.util import XModifyListener

from .engine import Engine, EngineAbsent
from .log import log
from .main_thread import later
from .places import WORDS
from .requests import answer


def _locale():
    context = uno.getComponentContext()
    provider = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.configuration.ConfigurationProvider", context
    )
    node = uno.createUnoStruct("com.sun.star.beans.NamedValue", "nodepath", "/org.openoffice.Setup/L10N")
    settings = provider.createInstanceWithArguments(
        "com.sun.star.configuration.ConfigurationAccess", (node,)
    )
    return settings.ooSetupSystemLocale or settings.ooLocale or "en-US"


class _Modified(unohelper.Base, XModifyListener):
    def __init__(self, session):
        self._session = session

    def modified(self, event):
        self._session.modified()

    def disposing(self, event):
        self._session.close()


class Session:
    """One document's pane, whether a panel shows it or a script asks for it."""

    def __init__(self, document):
        self.document = document
        self.key = document.RuntimeUID
        self.view = None
        self.absent = None
        self._panels = []
        self._writing = False
        self._told = False
        self._open = False
        self._listener = _Modified(self)
        document.addModifyListener(self._listener)

    def open(self):
        """Opens the pane in the engine where it is not open; what keeps it from that is kept in `absent`."""
        if self._open:
            return
        try:
            _engine.tell({"doc": self.key, "open": {"locale": _locale()}})
            self._open = True
            self.absent = None
        except EngineAbsent as absent:
            self.absent = absent
            self._show()

    def send(self, event):
        """Tells the engine what the user did."""
        self.open()
        if self._open:
            self._try(lambda: _engine.tell({"doc": self.key, "event": event}))

    def settle(self, event, seconds):
        """Tells the engine and waits until all of it is done. Never on the main thread, which is needed for it."""
        self.open()
        if self.absent:
            raise self.absent
        _engine.ask({"doc": self.key, "event": event}, seconds)

    def add_panel(self, panel):
        self._panels.append(panel)
        self.open()
        self._show()

    def remove_panel(self, panel):
        self._panels.remove(panel)

    def modified(self):
        """The user's own edits are told once, when the office is next idle."""
        if self._writing or self._told or not self._open:
            return
        self._told = True
        later(self._tell_modified)

    def _tell_modified(self):
        self._told = False
        self.send({"kind": "workbookChanged"})

    def close(self):
        _sessions.pop(self.key, None)
        if self._open:
            self._try(lambda: _engine.tell({"doc": self.key, "close": True}))

    def engine_ended(self):
        self._open = False
        if self._panels:
            self.open()

    def show(self, view):
        self.view = view
        self._show()

    def _show(self):
        for panel in list(self._panels):
            panel.show(self)

    def _try(self, action):
        try:
            action()
        except EngineAbsent as absent:
            self._open = False
            self.absent = absent
            self._show()

    def answer(self, message):
        """Does what the engine asked; on the main thread."""
        self._writing = True
        try:
            value = answer(self.document, message)
            reply = {"answer": message["ask"], "value": value}
        except Exception as error:
            log.exception("%s", message["what"])
            reply = {"answer": message["ask"], "failed": str(error)}
        # What was written is heard of only when the office is idle again.
        later(self._written)
        self._try(lambda: _engine.tell(reply))

    def _written(self):
        self._writing = False


_sessions = {}
_making = threading.Lock()


def session_of(document):
    """The document's pane, made when first asked for."""
    with _making:
        key = document.RuntimeUID
        if key not in _sessions:
            _sessions[key] = Session(document)
        return _sessions[key]


def _take(message):
    session = _sessions.get(message.get("doc"))
    if not session:
        return
    if "view" in message:
        later(lambda: session.show(message["view"]))
    elif "ask" in message:
        later(lambda: session.answer(message))


def _engine_ended():
    for session in list(_sessions.values()):
        later(session.engine_ended)


_engine = Engine(on_message=_take, on_end=_engine_ended)

"""The menu's entries: addresses of our own, done for the window they were chosen in."""

import unohelper
from com.sun.star.frame import XDispatch, XDispatchProvider
from com.sun.star.lang import XInitialization, XServiceInfo

from . import functions, sessions
from .document.sheet_view import shows_cells
from .engine.engine_absent import EngineAbsent
from .engine.finding_node import choose_node, is_program
from .office.file_choice import chosen_file
from .office.log import log_path
from .office.main_thread import later
from .office.open_documents import dispatch, is_spreadsheet
from .office.places import NAMES, WORDS, packaged
from .office.say import say
from .office.system_programs import show_file
from .panel.absent_view import absent_view, log_view
from .panel.panel import component_commands, panel_of

_SERVICES = (NAMES["menu"], "com.sun.star.frame.ProtocolHandler")


def show_panel(frame):
    """Opens the panel of a window and sets the keyboard there. Opening a deck that shows would close it."""
    if not panel_of(frame):
        dispatch(frame, f".uno:SidebarDeck.{NAMES['deck']}")
    panel = panel_of(frame)
    if panel:
        panel.focus()


def try_again(frame):
    functions.calculate_again()
    sessions.try_again()
    leave_log(frame)


def choose(frame):
    """What is no program is not kept as the choice."""
    path = chosen_file(WORDS["choosing"])
    if path and is_program(path):
        choose_node(path)
        functions.use_chosen_node()
        sessions.use_chosen_node()
        functions.calculate_again()
        leave_log(frame)
    elif path:
        show_view(frame, absent_view(EngineAbsent("cannotRun", path)))


def show_view(frame, view):
    """A view of the component's own, in the panel of a window."""
    show_panel(frame)

    def show():
        panel = panel_of(frame)
        if panel:
            panel.show_view(view)

    later(show)


def show_log(frame):
    show_view(frame, log_view())


def leave_log(frame):
    panel = panel_of(frame)
    if panel:
        panel.leave_view()


_COMMANDS = component_commands
_COMMANDS.update(
    {
        "show": show_panel,
        "tryAgain": try_again,
        "chooseNode": choose,
        "showLog": show_log,
        "openLog": lambda frame: show_file(log_path()),
        "back": leave_log,
        "help": lambda frame: show_file(packaged("help", "index.html")),
    }
)


def run(frame, command):
    """A command of the component's own, or `open.<section>` and `press.<action>` of the pane."""
    if command in _COMMANDS:
        _COMMANDS[command](frame)
        return
    if not shows_cells(frame.Controller):
        # The office shows no sidebar there either.
        say(frame, WORDS["noSheet"])
        return
    kind, _, name = command.partition(".")
    show_panel(frame)
    event = {"kind": "open", "section": name} if kind == "open" else {"kind": "press", "action": name}
    document = frame.Controller.Model
    if is_spreadsheet(document):
        sessions.session_of(document).send_after_reading(event)


class Menu(unohelper.Base, XServiceInfo, XInitialization, XDispatchProvider, XDispatch):
    def __init__(self, context, *arguments):
        self._frame = None

    def initialize(self, arguments):
        if arguments:
            self._frame = arguments[0]

    def queryDispatch(self, url, target, flags):
        return self if url.Complete.startswith(NAMES["protocol"]) else None

    def queryDispatches(self, requests):
        return tuple(self.queryDispatch(r.FeatureURL, r.FrameName, r.SearchFlags) for r in requests)

    def dispatch(self, url, arguments):
        # A script may ask on any thread.
        later(lambda: run(self._frame, url.Complete[len(NAMES["protocol"]) :]))

    def addStatusListener(self, listener, url):
        pass

    def removeStatusListener(self, listener, url):
        pass

    def getImplementationName(self):
        return NAMES["menu"]

    def supportsService(self, name):
        return name in _SERVICES

    def getSupportedServiceNames(self):
        return _SERVICES


IMPLEMENTATIONS = ((Menu, NAMES["menu"], _SERVICES),)

"""The side pane's panel: one a window, drawn from the view of its document."""

import uno
import unohelper
from com.sun.star.awt import XWindowListener
from com.sun.star.lang import XComponent, XServiceInfo
from com.sun.star.ui import LayoutSize, XSidebarPanel, XToolPanel, XUIElement, XUIElementFactory
from com.sun.star.ui.UIElementType import TOOLPANEL

from ..document.selection import watch_selection
from ..office.context import office_context
from ..office.log import log
from ..office.main_thread import later
from ..office.open_documents import is_spreadsheet
from ..office.places import NAMES
from ..sessions import session_of
from .drawing import Drawing

_SERVICES = (NAMES["panelFactory"],)

# Narrower than this no field and its unit stand side by side, pixels.
_NARROWEST = 190
_LOWEST = 200

panels = []

# Commands of the component's own buttons, by their names; the menu puts them here.
component_commands = {}


def panel_of(frame):
    """The panel that a window shows now, or None."""
    for panel in panels:
        if panel.Frame == frame:
            return panel
    return None


class _Resized(unohelper.Base, XWindowListener):
    def __init__(self, panel):
        self._panel = panel

    def windowResized(self, event):
        self._panel.layout()

    def windowMoved(self, event):
        pass

    def windowShown(self, event):
        self._panel.layout()

    def windowHidden(self, event):
        pass

    def disposing(self, event):
        pass


class Panel(unohelper.Base, XUIElement, XToolPanel, XSidebarPanel, XComponent):
    """Made each time the deck is shown, disposed of when it is left; what was typed lives in the engine."""

    def __init__(self, url, arguments):
        self.Frame = arguments["Frame"]
        self.ResourceURL = url
        self.Type = TOOLPANEL
        context = office_context()
        provider = context.ServiceManager.createInstanceWithContext(
            "com.sun.star.awt.ContainerWindowProvider", context
        )
        layout = f"vnd.sun.star.extension://{NAMES['extension']}/panel.xdl"
        self.Window = provider.createContainerWindow(layout, "", arguments["ParentWindow"], None)
        # Without this the panel stays blank.
        self.Window.setVisible(True)
        self._sidebar = arguments.get("Sidebar")
        self._drawing = Drawing(self.Window, self._happened)
        self._resized = _Resized(self)
        self.Window.addWindowListener(self._resized)
        self._listeners = []
        self._session = None
        self._unwatch = None
        self._own_view = False
        panels.append(self)

    def connect(self):
        """Joins the document's pane; before that nothing may be drawn."""
        controller = self.Frame.Controller
        document = controller.Model if controller else None
        if not is_spreadsheet(document):
            return
        self._session = session_of(document)
        self._session.add_panel(self)
        self._unwatch = watch_selection(controller, self._happened)

    def show(self, session):
        if self.Window is None or self._own_view:
            return
        view = session.shown
        if view:
            self._drawing.show(view)

    def show_view(self, view):
        """A view of the component's own, such as the log, until the user leaves it."""
        self._own_view = True
        self._drawing.show(view)

    def leave_view(self):
        """Back to the document's pane."""
        self._own_view = False
        if self._session:
            self.show(self._session)

    def layout(self):
        if self.Window is not None:
            self._drawing.layout()

    def focus(self):
        self._drawing.focus_first()

    def _happened(self, event, done=None):
        if event["kind"] == "component":
            # Not from within the button's own event: the buttons may be gone after it.
            later(lambda: component_commands[event["action"]](self.Frame))
        elif self._session:
            self._session.send(event, done)

    # XToolPanel, XSidebarPanel, XUIElement

    def createAccessible(self, parent):
        # The window tells of its controls by itself.
        return None

    def getHeightForWidth(self, width):
        # The panel scrolls by itself and takes the height there is.
        return LayoutSize(_LOWEST, -1, _LOWEST)

    def getMinimalWidth(self):
        return _NARROWEST

    def getRealInterface(self):
        return self

    # XComponent

    def dispose(self):
        panels.remove(self)
        if self._unwatch:
            self._unwatch()
        if self._session:
            self._session.remove_panel(self)
        window, self.Window = self.Window, None
        window.removeWindowListener(self._resized)
        window.dispose()
        for listener in self._listeners:
            listener.disposing(uno.createUnoStruct("com.sun.star.lang.EventObject", self))

    def addEventListener(self, listener):
        self._listeners.append(listener)

    def removeEventListener(self, listener):
        self._listeners = [kept for kept in self._listeners if kept != listener]


class PanelFactory(unohelper.Base, XServiceInfo, XUIElementFactory):
    """Makes the panel that the sidebar asks for."""

    def __init__(self, context):
        pass

    def createUIElement(self, url, arguments):
        panel = None
        try:
            panel = Panel(url, {argument.Name: argument.Value for argument in arguments})
            panel.connect()
            return panel
        except Exception:
            log.exception("the panel")
            # The office does not know it and would never dispose of it.
            if panel:
                panel.dispose()
            raise

    def getImplementationName(self):
        return NAMES["panelFactory"]

    def supportsService(self, name):
        return name in _SERVICES

    def getSupportedServiceNames(self):
        return _SERVICES


IMPLEMENTATIONS = ((PanelFactory, NAMES["panelFactory"], _SERVICES),)

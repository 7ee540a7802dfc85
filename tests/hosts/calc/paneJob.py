"""The pane and its panel from within the office, for the tests: presses what a user would, and tells what is shown.

It is installed as an extension of its own beside the one that is tested. A document is named by its RuntimeUID: Python
holds its own lock while it takes a document apart, the main thread holds the office's lock and waits for Python's, so
other threads than that one must not be handed documents.

Panels are told by the controls themselves: what the office tells screen readers may not be held by Python, whose
clearing away on a thread of its own locks what the main thread waits for.
"""

import json
import re
import threading
import time

import unohelper
from com.sun.star.lang import XServiceInfo
from com.sun.star.task import XJob

_NAME = "org.wandcount.tests.Pane"

# Is done after whatever the pane is doing, and changes nothing.
_WAITS_ITS_TURN = {"kind": "selected", "sheet": "", "row": 0, "column": 0}

# What the longest action may take, s.
_LIMIT = 120.0
_LOOKS = 100
_BETWEEN_LOOKS = 0.1

_FIELD = "com.sun.star.awt.UnoControlEditModel"
_BUTTON = "com.sun.star.awt.UnoControlButtonModel"
_LIST = "com.sun.star.awt.UnoControlListBoxModel"


def _panel_of(document):
    from wandcount.panel.panel import panel_of

    return panel_of(document.CurrentController.Frame)


def _least(control):
    """Width and height in pixels, below which words of the control would be cut or broken within."""
    from wandcount.panel.controls import list_width, longest_word, words_width, wrapped_height

    model = control.Model
    if not hasattr(control, "getPreferredSize"):
        return [0, 0]
    wanted = control.getPreferredSize()
    if model.supportsService(_LIST):
        return [list_width(control, control.SelectedItem), wanted.Height]
    if not hasattr(model, "Label"):
        return [wanted.Width, wanted.Height]
    if model.supportsService(_BUTTON):
        # What it prefers has more beside the label than the label needs.
        wanted.Width = control.getMinimumSize().Width
    beside = wanted.Width - words_width(control, model.Label)
    height = wrapped_height(control, control.getPosSize().Width)
    # The office breaks after these as well.
    parts = re.sub("([-/,])", r"\1 ", model.Label)
    return [beside + longest_word(control, parts), height]


def _told(control, measured):
    model = control.Model
    field = model.supportsService(_FIELD)
    area = control.getPosSize()
    return {
        "text": control.Text if field else getattr(model, "Label", ""),
        "field": field,
        # What is chosen in a list; None where it is no list.
        "chosen": control.SelectedItem if model.supportsService(_LIST) else None,
        # How far a bar is, in thousandths; None where it is no bar.
        "done": getattr(model, "ProgressValue", None),
        # None where the office's own colour is taken.
        "colour": getattr(model, "TextColor", None),
        "area": [area.X, area.Y, area.Width, area.Height],
        **({"least": _least(control)} if measured else {}),
    }


def _panel_told(document, measured):
    """Every control from top to bottom, and the panel's size; measured, which takes time, also what each needs."""
    panel = _panel_of(document)
    size = panel.Window.getPosSize()
    return {
        "width": size.Width,
        "height": size.Height,
        "ground": panel.Window.StyleSettings.DialogColor,
        "controls": [_told(control, measured) for control in panel._drawing.controls()],
    }


def _focus_control(document, label):
    """Sets the keyboard on a button, or on the field after a label."""
    controls = _panel_of(document)._drawing.controls()
    at = next(i for i, c in enumerate(controls) if getattr(c.Model, "Label", None) == label)
    takes_keys = (c for c in controls[at:] if any(c.Model.supportsService(kind) for kind in (_FIELD, _BUTTON)))
    next(takes_keys).setFocus()


def _document(key):
    from wandcount.office.open_documents import open_spreadsheets

    return next(document for document in open_spreadsheets() if document.RuntimeUID == key)


def _on_main_thread(action):
    """The action's result; what it raises is raised here."""
    from wandcount.office.main_thread import later

    done = threading.Event()
    result = {}

    def run():
        try:
            result["value"] = action()
        except Exception as error:
            result["error"] = error
        finally:
            done.set()

    later(run)
    if not done.wait(_LIMIT):
        raise RuntimeError("the main thread is busy")
    if "error" in result:
        raise result["error"]
    return result["value"]


def _settle(key, event):
    """Tells the pane and waits until all of it is done."""
    from wandcount.sessions import session_of

    done = threading.Event()
    _on_main_thread(lambda: session_of(_document(key)).send(event, done.set))
    if not done.wait(_LIMIT):
        raise TimeoutError


def _plain(told):
    """Records as the engine told them."""
    if isinstance(told, list):
        return [_plain(one) for one in told]
    if not hasattr(told, "_asdict"):
        return told
    return {name: _plain(value) for name, value in told._asdict().items() if value is not None}


def _shown(key):
    """The view; where the engine has just ended, that of the next one or why there is none."""
    from wandcount.sessions import session_of

    for _ in range(_LOOKS):
        view = _on_main_thread(lambda: session_of(_document(key)).shown)
        if view:
            return _plain(view)
        time.sleep(_BETWEEN_LOOKS)
    return None


def _do(key, request):
    if "what" in request:
        from wandcount.requests import answer
        from wandcount.wire import REQUESTS, read

        return _on_main_thread(lambda: answer(_document(key), read(REQUESTS, request)))
    if "panel" in request:
        return _on_main_thread(lambda: _panel_told(_document(key), request["panel"] == "measured"))
    if "focus" in request:
        return _on_main_thread(lambda: _focus_control(_document(key), request["focus"]))
    # A pane that has just been opened is still reading, and takes no press meanwhile.
    _settle(key, _WAITS_ITS_TURN)
    if "event" in request:
        _settle(key, request["event"])
    return _shown(key)


class PaneJob(unohelper.Base, XServiceInfo, XJob):
    """Arguments: Document, its RuntimeUID, and Request, a JSON text. The answer is a JSON text."""

    def __init__(self, context):
        # The office finds the modules of an extension once it has made something of it.
        context.ServiceManager.createInstanceWithContext("org.wandcount.Menu", context)

    def execute(self, arguments):
        given = {argument.Name: argument.Value for argument in arguments}
        return json.dumps(_do(given["Document"], json.loads(given["Request"])))

    def getImplementationName(self):
        return _NAME

    def supportsService(self, name):
        return name == _NAME

    def getSupportedServiceNames(self):
        return (_NAME,)


g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(PaneJob, _NAME, (_NAME,))

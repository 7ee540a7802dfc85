"""The pane for scripts outside the office: what a button does, and what the pane then shows.

A document is named by its RuntimeUID. Python holds its own lock while it takes a document apart, the main thread
holds the office's lock and waits for Python's: so other threads than that one must not be handed documents.
"""

import json
import threading
import time

import unohelper
from com.sun.star.lang import XServiceInfo
from com.sun.star.task import XJob

from .office.main_thread import on_main_thread
from .office.open_documents import document_named
from .office.places import NAMES
from .panel.panel_told import focus_control, panel_told
from .requests import answer
from .sessions import WAITS_ITS_TURN, session_of, session_of_key

_SERVICES = (NAMES["paneJob"],)

# What the longest action may take, s.
_LIMIT = 120.0
_LOOKS = 100
_BETWEEN_LOOKS = 0.1


def _settle(key, event):
    """Tells the pane and waits until all of it is done."""
    done = threading.Event()
    on_main_thread(lambda: session_of(document_named(key)).send(event, done.set))
    if not done.wait(_LIMIT):
        raise TimeoutError


def _do(key, request):
    if "what" in request:
        return on_main_thread(lambda: answer(document_named(key), request))
    if "panel" in request:
        return on_main_thread(lambda: panel_told(document_named(key), request["panel"] == "measured"))
    if "focus" in request:
        return on_main_thread(lambda: focus_control(document_named(key), request["focus"]))
    # A pane that has just been opened is still reading, and takes no press meanwhile.
    _settle(key, WAITS_ITS_TURN)
    if "event" in request:
        _settle(key, request["event"])
    return _shown(key)


def _shown(key):
    """The view; where the engine has just ended, that of the next one or why there is none."""
    for _ in range(_LOOKS):
        view = session_of_key(key).shown
        if view:
            return view
        time.sleep(_BETWEEN_LOOKS)
    return None


class PaneJob(unohelper.Base, XServiceInfo, XJob):
    """Arguments: Document, its RuntimeUID, and Request, a JSON text. The answer is a JSON text."""

    def __init__(self, context):
        pass

    def execute(self, arguments):
        given = {argument.Name: argument.Value for argument in arguments}
        return json.dumps(_do(given["Document"], json.loads(given["Request"])))

    def getImplementationName(self):
        return NAMES["paneJob"]

    def supportsService(self, name):
        return name in _SERVICES

    def getSupportedServiceNames(self):
        return _SERVICES


IMPLEMENTATIONS = ((PaneJob, NAMES["paneJob"], _SERVICES),)

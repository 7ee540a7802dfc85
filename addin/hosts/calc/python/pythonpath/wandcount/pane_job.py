"""The pane for scripts: what a button does, and what the pane then shows. Not to be called on the main thread."""

import json

import unohelper
from com.sun.star.lang import XServiceInfo
from com.sun.star.task import XJob

from .main_thread import on_main_thread
from .places import NAMES
from .requests import answer
from .sessions import session_of

_SERVICES = (NAMES["paneJob"],)

# What the longest action may take, s.
_LIMIT = 120.0


def _do(document, request):
    if "what" in request:
        return on_main_thread(lambda: answer(document, request))
    session = session_of(document)
    if "event" in request:
        session.settle(request["event"], _LIMIT)
        # The last view is on its way to the main thread; what comes after it comes later.
        on_main_thread(lambda: None)
    return session.view


class PaneJob(unohelper.Base, XServiceInfo, XJob):
    """Arguments: Document, and Request, a JSON text. The answer is a JSON text."""

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

"""Tells when the office ends."""

import unohelper
from com.sun.star.frame import XTerminateListener

from .open_documents import desktop


class _Listener(unohelper.Base, XTerminateListener):
    def __init__(self, action):
        self._action = action

    def queryTermination(self, event):
        """Nothing of ours keeps the office from ending."""

    def notifyTermination(self, event):
        self._action()

    def disposing(self, event):
        pass


def at_office_end(action):
    """Calls the action once, when the office is sure to end."""
    desktop().addTerminateListener(_Listener(action))

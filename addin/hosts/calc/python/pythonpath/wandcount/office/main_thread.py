"""Runs something on the office's main thread, where alone documents and controls may be touched."""

import functools

import unohelper
from com.sun.star.awt import XCallback

from .context import office_context
from .log import log


class _Callback(unohelper.Base, XCallback):
    def __init__(self, action):
        self._action = action

    def notify(self, data):
        try:
            self._action()
        except Exception:
            log.exception("on the main thread")


@functools.lru_cache(maxsize=None)
def _caller():
    context = office_context()
    return context.ServiceManager.createInstanceWithContext("com.sun.star.awt.AsyncCallback", context)


def later(action):
    """Runs the action when the office is next idle. May be called on any thread."""
    _caller().addCallback(_Callback(action), None)

"""Runs something on the office's main thread, where alone documents and controls may be touched."""

import functools
import threading

import unohelper
from com.sun.star.awt import XCallback

from .context import office_context
from .log import log


# The main thread's number, from the first thing that ran there.
_main = None

# What the longest action may take, s.
_LIMIT = 120.0


class _Callback(unohelper.Base, XCallback):
    def __init__(self, action):
        self._action = action

    def notify(self, data):
        global _main
        _main = threading.get_ident()
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


def on_main_thread(action):
    """The action's result, from another thread; what it raises is raised here. The main thread cannot wait for itself."""
    if threading.get_ident() == _main:
        raise RuntimeError("asked on the main thread")
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

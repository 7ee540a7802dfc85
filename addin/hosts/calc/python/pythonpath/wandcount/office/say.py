"""Says something in a small window, where no panel can."""

from com.sun.star.awt.MessageBoxButtons import BUTTONS_OK
from com.sun.star.awt.MessageBoxType import INFOBOX

from .places import WORDS


def say(frame, words):
    window = frame.ContainerWindow
    box = window.Toolkit.createMessageBox(window, INFOBOX, BUTTONS_OK, WORDS["name"], words)
    try:
        box.execute()
    finally:
        box.dispose()

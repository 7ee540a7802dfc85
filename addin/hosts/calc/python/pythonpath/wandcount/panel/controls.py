"""Native controls in a panel: making them, measuring them, placing them."""

import re

import uno

from ..office.context import office_context

_POSITION_AND_SIZE = 15

# Beside and above a control, pixels at 96 dots an inch.
GAP = 6

# Words part here; Python's own split would part a number from the unit that is kept beside it.
_AT = re.compile("[ \n]")

# A height that no text reaches.
_ANY = 30_000


def make_control(window, kind, name, **properties):
    """A control of a kind such as "Button", in the panel's window."""
    model = window.Model
    made = model.createInstance(f"com.sun.star.awt.UnoControl{kind}Model")
    made.Name = name
    for key, value in properties.items():
        setattr(made, key, value)
    model.insertByName(name, made)
    return window.getControl(name)


def remove_control(window, name):
    # Hidden first: what was drawn of it would stay until something else is drawn there.
    window.getControl(name).setVisible(False)
    window.Model.removeByName(name)


def place(control, x, y, width, height):
    control.setPosSize(int(x), int(y), int(width), int(height), _POSITION_AND_SIZE)


def wrapped_height(control, width):
    """The height of a text that is broken to a width, as the office itself breaks it."""
    return control.calcAdjustedSize(uno.createUnoStruct("com.sun.star.awt.Size", int(width), _ANY)).Height


def _widest(control, texts):
    font = control.Peer.getFont(uno.createUnoStruct("com.sun.star.awt.FontDescriptor"))
    return max(map(font.getStringWidth, texts), default=0)


def words_width(control, words):
    """How wide words are in the control's own font, the longest line of them."""
    return _widest(control, words.split("\n"))


def longest_word(control, text):
    """The width of the widest word: in less, the office breaks within it."""
    return _widest(control, _AT.split(text))


def list_width(control, words):
    """How wide a list must be to show one of its words in full."""
    beside = control.getPreferredSize().Width - _widest(control, control.Model.StringItemList)
    return beside + words_width(control, words)


def graphic_of(svg):
    """A picture from the text of an SVG."""
    context = office_context()
    manager = context.ServiceManager
    stream = manager.createInstanceWithArgumentsAndContext(
        "com.sun.star.io.SequenceInputStream", (uno.ByteSequence(svg.encode("utf-8")),), context
    )
    provider = manager.createInstanceWithContext("com.sun.star.graphic.GraphicProvider", context)
    source = uno.createUnoStruct("com.sun.star.beans.PropertyValue")
    source.Name, source.Value = "InputStream", stream
    return provider.queryGraphic((source,))

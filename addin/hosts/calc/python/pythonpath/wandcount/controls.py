"""Native controls in a panel: making them, measuring them, placing them."""

import math

import uno

_POSITION_AND_SIZE = 15

# Beside and above a control, pixels at 96 dots an inch.
GAP = 6


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


def wrapped_height(control, text, width):
    """The height of a text of several lines; a control by itself tells only that of one."""
    one = control.getPreferredSize()
    if not text or one.Width <= width:
        return one.Height
    # The preferred size is that of the longest line.
    longest = max(len(line) for line in text.split("\n"))
    letter = one.Width / max(longest, 1)
    fit = max(int(width / letter), 1)
    lines = 0
    for line in text.split("\n"):
        used = 0
        lines += 1
        for word in line.split(" "):
            length = len(word)
            if used and used + 1 + length > fit:
                lines += 1
                used = 0
            lines += length // fit if length > fit else 0
            used += length + (1 if used else 0)
    lines_in_one = text.count("\n") + 1
    return math.ceil(one.Height / lines_in_one * lines)


def graphic_of(svg):
    """A picture from the text of an SVG."""
    context = uno.getComponentContext()
    manager = context.ServiceManager
    stream = manager.createInstanceWithArgumentsAndContext(
        "com.sun.star.io.SequenceInputStream", (uno.ByteSequence(svg.encode("utf-8")),), context
    )
    provider = manager.createInstanceWithContext("com.sun.star.graphic.GraphicProvider", context)
    source = uno.createUnoStruct("com.sun.star.beans.PropertyValue")
    source.Name, source.Value = "InputStream", stream
    return provider.queryGraphic((source,))

"""What the panel of a window shows, for scripts and tests. On the main thread.

Told by the controls themselves: what the office tells screen readers may not be held by Python, whose clearing away
on a thread of its own locks what the main thread waits for.
"""

import re

from .controls import list_width, longest_word, words_width, wrapped_height
from .panel import panel_of

_FIELD = "com.sun.star.awt.UnoControlEditModel"
_BUTTON = "com.sun.star.awt.UnoControlButtonModel"
_LIST = "com.sun.star.awt.UnoControlListBoxModel"


def _least(control):
    """Width and height in pixels, below which words of the control would be cut or broken within."""
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


def panel_told(document, measured):
    """Every control from top to bottom, and the panel's size; measured, which takes time, also what each needs."""
    panel = panel_of(document.CurrentController.Frame)
    size = panel.Window.getPosSize()
    return {
        "width": size.Width,
        "height": size.Height,
        "ground": panel.Window.StyleSettings.DialogColor,
        "controls": [_told(control, measured) for control in panel.controls()],
    }


def focus_control(document, label):
    """Sets the keyboard on a button, or on the field after a label."""
    controls = panel_of(document.CurrentController.Frame).controls()
    at = next(i for i, c in enumerate(controls) if getattr(c.Model, "Label", None) == label)
    takes_keys = (c for c in controls[at:] if any(c.Model.supportsService(kind) for kind in (_FIELD, _BUTTON)))
    next(takes_keys).setFocus()

"""What every piece of a view has in common: its controls, and what the user does to them."""

import unohelper
from com.sun.star.awt import XActionListener, XFocusListener, XItemListener, XTextListener

from .controls import make_control, remove_control


class _Listener(unohelper.Base, XActionListener, XItemListener, XTextListener, XFocusListener):
    """What the user does to one control."""

    def __init__(self, did, reached, left):
        self._did = did
        self._reached = reached
        self._left = left

    def actionPerformed(self, event):
        self._did()

    def itemStateChanged(self, event):
        self._did()

    def textChanged(self, event):
        self._did()

    def focusGained(self, event):
        self._reached(event.Source)

    def focusLost(self, event):
        self._left(event.Source)

    def disposing(self, event):
        pass


class Piece:
    """One piece that is shown. A kind makes its controls, takes another view's values, and places itself."""

    def __init__(self, drawing, piece):
        self.drawing = drawing
        self.piece = piece
        self.controls = []
        self.make()

    def add(self, kind, **properties):
        control = make_control(self.drawing.window, kind, self.drawing.next_name(), **properties)
        self.controls.append(control)
        return control

    def listen(self, control, did):
        listener = _Listener(did, self.drawing.reached, self.drawing.left)
        control.addFocusListener(listener)
        return listener

    def remove(self):
        for control in self.controls:
            remove_control(self.drawing.window, control.Model.Name)

    def tabbed(self):
        """Controls in the order of the Tab key."""
        return self.controls

    def placed(self):
        """Every control that moves when the panel scrolls."""
        return self.controls

    def update(self, piece):
        """Takes another view's values; True where the room it needs may be another."""
        self.piece = piece
        return False

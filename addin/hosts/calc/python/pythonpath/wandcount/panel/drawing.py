"""Draws a view with native controls, keeps those that stay, and scrolls."""

import contextlib

import unohelper
from com.sun.star.awt import XAdjustmentListener

from .controls import GAP, make_control, place, wrapped_height
from .pieces import KINDS
from .shades import is_dark

_MARGIN = 8
_INDENT = 10
_BAR = 16
# Where a control touches the right edge, some back ends make the panel wider for it, again and again.
_EDGE = 9
_STEP = 40
_VERTICAL = 2


class _Scrolled(unohelper.Base, XAdjustmentListener):
    def __init__(self, scrolled):
        self._scrolled = scrolled

    def adjustmentValueChanged(self, event):
        self._scrolled(event.Value)

    def disposing(self, event):
        pass


class Drawing:
    """The pieces of one panel. `happened` is told what the user does, and may be given what to do when it is done."""

    def __init__(self, window, happened):
        self.window = window
        self.happened = happened
        self.quiet = False
        self._names = 0
        self._pieces = {}
        self._order = []
        self._section = None
        self._top = 0
        self._height = 0
        self._laying = False
        self._showing = False
        self._next = None
        # The control that the keyboard is on; None while it is on none of them.
        self._reached = None
        self._wanted = False
        settings = window.StyleSettings
        self.dark = is_dark(settings.DialogColor)
        # Never seen: tells how high words would be.
        self._measure = make_control(window, "FixedText", "measure", MultiLine=True)
        self._measure.setVisible(False)
        self.font_height = settings.ApplicationFont.Height or 10
        self._bar = make_control(window, "ScrollBar", "scroll", Orientation=1, LineIncrement=_STEP, Tabstop=True)
        self._bar.addAdjustmentListener(_Scrolled(self._scroll))
        self._bar.setVisible(False)

    def next_name(self):
        self._names += 1
        return f"c{self._names}"

    @contextlib.contextmanager
    def quietly(self):
        """What controls tell meanwhile was not done by the user."""
        was, self.quiet = self.quiet, True
        try:
            yield
        finally:
            self.quiet = was

    def height_of(self, words, width, weight):
        """How high words are that are broken to a width, pixels."""
        self._measure.Model.FontWeight = weight
        self._measure.Model.Label = words
        return wrapped_height(self._measure, width)

    def shows(self, piece):
        return piece in self._order

    def show(self, view):
        """Draws a view. A control may let others run while it is drawn: what they want drawn then comes after it."""
        self._next = view
        if self._showing:
            return
        self._showing = True
        try:
            while self._next:
                view, self._next = self._next, None
                self._draw(view)
        finally:
            self._showing = False

    def _draw(self, view):
        """Controls whose piece stays are kept, with the focus and what is typed in them."""
        wanted = {}
        for piece in view.pieces:
            key = (piece.kind, piece.key)
            while key in wanted:
                key += ("again",)
            wanted[key] = piece
        changed = list(wanted) != list(self._pieces)
        with self.quietly():
            for key in [key for key in self._pieces if key not in wanted]:
                self._pieces.pop(key).remove()
            drawn = {}
            for key, piece in wanted.items():
                if key in self._pieces:
                    drawn[key] = self._pieces[key]
                    changed = drawn[key].update(piece) or changed
                else:
                    drawn[key] = KINDS[piece.kind](self, piece)
            self._pieces = drawn
            self._order = list(drawn.values())
            self._number()
        if view.section != self._section:
            self._section = view.section
            self._top = 0
        if changed:
            self.layout()
        # The office leaves the keyboard on nothing where its control is gone, and no key leads back from there.
        if self._wanted or (self._reached and self._reached not in self.controls()):
            self.focus_first()

    def _number(self):
        """The Tab key and whoever reads the panel aloud go from top to bottom, a label before its field."""
        index = 0
        for piece in self._order:
            for control in piece.placed():
                if control.Model.TabIndex != index:
                    control.Model.TabIndex = index
                index += 1
        # Below the last field there may be more to read.
        self._bar.Model.TabIndex = index

    def layout(self):
        """Places every piece for the width there is."""
        if self._laying:
            return
        self._laying = True
        try:
            self._lay()
        finally:
            self._laying = False

    def _lay(self):
        room = self.window.getPosSize()
        if room.Width < 2 * _MARGIN + _BAR + _EDGE:
            return
        width = room.Width - 2 * _MARGIN - _BAR - _EDGE
        y = _MARGIN - self._top
        for piece in self._order:
            x = _MARGIN + piece.piece.indent * _INDENT
            y += piece.place(x, y, width - piece.piece.indent * _INDENT) + GAP
        self._height = y + self._top + _MARGIN
        self._place_bar(room)

    def _place_bar(self, room):
        needed = self._height > room.Height
        self._bar.setVisible(needed)
        if not needed:
            if self._top:
                self._scroll_to(0)
            return
        place(self._bar, room.Width - _BAR - _EDGE, 0, _BAR, room.Height)
        with self.quietly():
            model = self._bar.Model
            model.ScrollValueMax = self._height
            model.VisibleSize = room.Height
            model.BlockIncrement = room.Height - _STEP
            model.ScrollValue = self._top
        last = self._height - room.Height
        if self._top > last:
            self._scroll_to(last)

    def _scroll(self, value):
        if not self.quiet:
            self._scroll_to(value)

    def _scroll_to(self, top):
        top = max(0, int(top))
        by = self._top - top
        if not by:
            return
        self._top = top
        for piece in self._order:
            for control in piece.placed():
                at = control.getPosSize()
                control.setPosSize(at.X, at.Y + by, at.Width, at.Height, _VERTICAL)
        with self.quietly():
            self._bar.Model.ScrollValue = top

    def reached(self, control):
        self._reached = control
        self._bring_into_view(control)

    def is_on(self, control):
        """True where the keyboard is on a control."""
        return control == self._reached

    def left(self, control):
        if control == self._reached:
            self._reached = None

    def _bring_into_view(self, control):
        """Scrolls to a control that the Tab key reached."""
        at = control.getPosSize()
        room = self.window.getPosSize().Height
        if at.Y < 0:
            self._scroll_to(self._top + at.Y - _MARGIN)
        elif at.Y + at.Height > room:
            self._scroll_to(self._top + at.Y + at.Height - room + _MARGIN)

    def controls(self):
        return [control for piece in self._order for control in piece.placed()]

    def focus_first(self):
        """Sets the keyboard on the first control; where nothing is drawn yet, as soon as it is."""
        self._reached = None
        first = next((control for piece in self._order for control in piece.tabbed()), None)
        self._wanted = first is None
        if first:
            first.setFocus()

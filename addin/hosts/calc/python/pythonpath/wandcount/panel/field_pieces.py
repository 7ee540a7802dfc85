"""Fields: a label with something to type in, to choose from, or to tick."""

from .controls import GAP, list_width, place, wrapped_height
from .list_menu import ListMenu, lists_go_astray
from .piece import Piece

# More of the width than this is for the control, not for its label.
_LABEL_SHARE = 0.42

# This much room has a number, and this much a field for words, pixels; else it goes under what is beside it.
_NARROWEST_ENTRY = 60
_NARROWEST_WORDS = 120


class Labelled(Piece):
    """A control with its label beside it where there is room, else above it."""

    def make(self):
        self._label = self.add("FixedText", MultiLine=True, Label=self.piece.label)
        self._spoken = None
        if self.piece.spoken != self.piece.label:
            self._spoken = self.add_spoken()
        self.make_control()

    def add_spoken(self):
        """The office calls a field after the text just before it; this one takes no room."""
        return self.add("FixedText", Label=self.piece.spoken)

    def relabel(self, piece):
        """True where the label is another."""
        if self._spoken:
            self._spoken.Model.Label = piece.spoken
        if not self._label or self._label.Model.Label == piece.label:
            return False
        self._label.Model.Label = piece.label
        return True

    def least_width(self):
        """Narrower than this the control would cut its words."""
        return 0

    def place(self, x, y, width):
        words = self._label.getPreferredSize()
        beside = width * _LABEL_SHARE
        if words.Width <= beside and self.least_width() <= width - beside - GAP:
            height = self.place_control(x + beside + GAP, y, width - beside - GAP)
            place(self._label, x, y + (height - words.Height) / 2, beside, words.Height)
            return height
        above = wrapped_height(self._label, width)
        place(self._label, x, y, width, above)
        return above + self.place_control(x, y + above, width)


class Entry(Labelled):
    """A field to type in. What the user types while the engine is busy is never overwritten."""

    def make_control(self):
        piece = self.piece
        self._in_flight = False
        self._edit = self.add("Edit", Text=piece.value, HelpText=piece.help or piece.spoken)
        self._edit.Model.Enabled = not piece.disabled
        self._sent = piece.value
        self._edit.addTextListener(self.listen(self._edit, self._typed))
        unit = piece.unit
        self._unit = None
        self._choice = None
        if isinstance(unit, str):
            self._unit = self.add("FixedText", Label=unit)
        elif unit:
            self._choice = Choice(self.drawing, unit, bare=True)

    def remove(self):
        super().remove()
        if self._choice:
            self._choice.remove()

    def tabbed(self):
        return [self._edit] + (self._choice.tabbed() if self._choice else [])

    def placed(self):
        return self.controls + (self._choice.controls if self._choice else [])

    def _typed(self):
        if not self.drawing.quiet and not self._in_flight:
            self._send()

    def _send(self):
        text = self._edit.Text
        if text == self._sent:
            return
        self._sent = text
        self._in_flight = True
        event = {"kind": "type", "field": self.piece.field, "value": text}
        self.drawing.happened(event, self._heard)

    def _heard(self):
        self._in_flight = False
        if not self.drawing.shows(self):
            return
        if self._edit.Text != self._sent:
            self._send()
        else:
            self._set()

    def _set(self):
        if self._edit.Text != self.piece.value:
            with self.drawing.quietly():
                self._edit.Text = self.piece.value
        self._sent = self.piece.value

    def update(self, piece):
        relabelled = self.relabel(piece)
        same_unit = type(piece.unit) is type(self.piece.unit)
        self.piece = piece
        self._edit.Model.Enabled = not piece.disabled
        if not self._in_flight:
            self._set()
        if not same_unit:
            self.remove()
            self.controls = []
            self.make()
            return True
        if self._unit:
            self._unit.Model.Label = piece.unit
        if self._choice:
            self._choice.update(piece.unit)
        return relabelled

    def least_width(self):
        if self._choice:
            return _NARROWEST_ENTRY + GAP + self._choice.least_width()
        if self.piece.words:
            return _NARROWEST_WORDS
        unit = self._unit.getPreferredSize().Width + GAP if self._unit else 0
        return min(self._edit.getPreferredSize().Width, _NARROWEST_WORDS) + unit

    def place_control(self, x, y, width):
        height = self._edit.getPreferredSize().Height
        if self._choice and width < self.least_width():
            place(self._edit, x, y, width, height)
            return height + self._choice.place_control(x, y + height, width)
        if self._choice:
            beside = self._choice.least_width()
            place(self._edit, x, y, width - beside - GAP, height)
            return max(height, self._choice.place_control(x + width - beside, y, beside))
        if self._unit:
            size = self._unit.getPreferredSize()
            beside = min(size.Width, width * 0.5)
            place(self._edit, x, y, width - beside - GAP, height)
            place(self._unit, x + width - beside, y + (height - size.Height) / 2, beside, size.Height)
        else:
            place(self._edit, x, y, width, height)
        return height


class Choice(Labelled):
    """One out of several; bare where it stands beside a field as its unit."""

    def __init__(self, drawing, piece, bare=False):
        self._bare = bare
        super().__init__(drawing, piece)

    def make(self):
        if self._bare:
            self._label = None
            self._spoken = self.add_spoken()
            self.make_control()
        else:
            super().make()

    def tabbed(self):
        return [self._list]

    def make_control(self):
        self._menu = None
        if lists_go_astray():
            button = self.add("Button", Align=0, Tabstop=False, FocusOnClick=False)
            self._menu = ListMenu(self.drawing, button, self._chosen)
        self._list = self.add("ListBox", Dropdown=True, HelpText=self.piece.spoken)
        # What is chosen, in full where the list cuts it.
        self._whole = self.add("FixedText", MultiLine=True)
        self._words = ""
        self._set()
        self._list.addItemListener(self.listen(self._list, self._chosen))
        if self._menu:
            self._menu.watch(self._list)

    def remove(self):
        if self._menu:
            self._menu.remove()
        super().remove()

    def _set(self):
        piece, model = self.piece, self._list.Model
        with self.drawing.quietly():
            shown = tuple(piece.shown)
            if tuple(model.StringItemList) != shown:
                model.StringItemList = shown
            chosen = (piece.values.index(piece.value),) if piece.value in piece.values else ()
            if tuple(model.SelectedItems) != chosen:
                model.SelectedItems = chosen
            model.Enabled = not piece.disabled
        was, self._words = self._words, shown[chosen[0]] if chosen else ""
        return self._words != was

    def _chosen(self):
        if self.drawing.quiet:
            return
        at = self._list.getSelectedItemPos()
        if at >= 0:
            value = self.piece.values[at]
            self.drawing.happened({"kind": "type", "field": self.piece.field, "value": value})

    def update(self, piece):
        relabelled = self.relabel(piece)
        self.piece = piece
        return self._set() or relabelled

    def least_width(self):
        return self._list.getPreferredSize().Width

    def place_control(self, x, y, width):
        height = self._list.getPreferredSize().Height
        place(self._list, x, y, width, height)
        if self._menu:
            self._menu.uncover()
        cut = list_width(self._list, self._words) > width
        self._whole.setVisible(cut)
        self._whole.Model.Label = self._words if cut else ""
        below = wrapped_height(self._whole, width) if cut else 0
        place(self._whole, x, y + height, width if cut else 0, below)
        return height + below


class Toggle(Piece):
    def make(self):
        self._box = self.add("CheckBox", MultiLine=True)
        self._set()
        self._box.addItemListener(self.listen(self._box, self._changed))

    def _set(self):
        with self.drawing.quietly():
            model = self._box.Model
            model.Label = self.piece.label
            model.State = 1 if self.piece.on else 0
            model.Enabled = not self.piece.disabled

    def _changed(self):
        if not self.drawing.quiet:
            value = "yes" if self._box.State == 1 else ""
            self.drawing.happened({"kind": "type", "field": self.piece.field, "value": value})

    def update(self, piece):
        self.piece = piece
        self._set()
        return False

    def place(self, x, y, width):
        height = wrapped_height(self._box, width)
        place(self._box, x, y, width, height)
        return height

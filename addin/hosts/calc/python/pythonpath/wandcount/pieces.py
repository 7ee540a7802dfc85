"""Each kind of piece of a view, drawn with controls of the office."""

import unohelper
from com.sun.star.awt import XActionListener, XFocusListener, XItemListener, XTextListener
from com.sun.star.style.HorizontalAlignment import LEFT, RIGHT

from .controls import GAP, graphic_of, make_control, place, remove_control, wrapped_height
from .shades import shade

_BOLD = 150.0
_BOLD_TONES = ("title", "answer", "heading", "warning", "error")
_SIGNS = {"warning": "⚠ ", "error": "⚠ ", "good": "✓ "}
_TITLE_SIZE = 1.35

# More of the width than this is for the control, not for its label.
_LABEL_SHARE = 0.42

_GRID_MOST_ROWS = 9
# In the units of dialogs, which a column is measured in.
_GRID_LETTER = 4
_GRID_CELL = 10
_GRID_BAR = 18
# Pixels in such a unit, about.
_PIXELS = 1.8


class _Listener(unohelper.Base, XActionListener, XItemListener, XTextListener, XFocusListener):
    """What the user does to one control."""

    def __init__(self, did, focused):
        self._did = did
        self._focused = focused

    def actionPerformed(self, event):
        self._did()

    def itemStateChanged(self, event):
        self._did()

    def textChanged(self, event):
        self._did()

    def focusGained(self, event):
        self._focused(event.Source)

    def focusLost(self, event):
        pass

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
        listener = _Listener(did, self.drawing.bring_into_view)
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


class Text(Piece):
    def make(self):
        self._text = self.add("FixedText", MultiLine=True)
        self._set()

    def _set(self):
        tone = self.piece["tone"]
        model = self._text.Model
        model.Label = self._words = _SIGNS.get(tone, "") + self.piece["text"]
        if tone in _BOLD_TONES:
            model.FontWeight = _BOLD
        if tone == "title":
            model.FontHeight = self.drawing.font_height * _TITLE_SIZE
        colour = shade(tone, self.drawing.dark)
        if colour is not None:
            model.TextColor = colour

    def tabbed(self):
        return []

    def update(self, piece):
        if piece == self.piece:
            return False
        if piece["tone"] != self.piece["tone"]:
            self.remove()
            self.controls = []
            self.piece = piece
            self.make()
            return True
        self.piece = piece
        self._set()
        return True

    def place(self, x, y, width):
        height = wrapped_height(self._text, self._words, width)
        place(self._text, x, y, width, height)
        return height


class Labelled(Piece):
    """A control with its label beside it where there is room, else above it."""

    def make(self):
        self._label = self.add("FixedText", MultiLine=True, Label=self.piece["label"])
        self.make_control()

    def relabel(self, piece):
        """True where the label is another."""
        if self._label.Model.Label == piece["label"]:
            return False
        self._label.Model.Label = piece["label"]
        return True

    def place(self, x, y, width):
        words = self._label.getPreferredSize()
        beside = width * _LABEL_SHARE
        if words.Width <= beside:
            height = self.place_control(x + beside + GAP, y, width - beside - GAP)
            place(self._label, x, y + (height - words.Height) / 2, beside, words.Height)
            return height
        above = wrapped_height(self._label, self.piece["label"], width)
        place(self._label, x, y, width, above)
        return above + self.place_control(x, y + above, width)


class Entry(Labelled):
    """A field to type in. What the user types while the engine is busy is never overwritten."""

    def make_control(self):
        piece = self.piece
        self._in_flight = False
        self._edit = self.add("Edit", Text=piece["value"], HelpText=piece.get("help") or piece["label"])
        self._edit.Model.Enabled = not piece.get("disabled")
        self._sent = piece["value"]
        self._edit.addTextListener(self.listen(self._edit, self._typed))
        unit = piece.get("unit")
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
        event = {"kind": "type", "field": self.piece["field"], "value": text}
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
        if self._edit.Text != self.piece["value"]:
            with self.drawing.quietly():
                self._edit.Text = self.piece["value"]
        self._sent = self.piece["value"]

    def update(self, piece):
        relabelled = self.relabel(piece)
        same_unit = type(piece.get("unit")) is type(self.piece.get("unit"))
        self.piece = piece
        self._edit.Model.Enabled = not piece.get("disabled")
        if not self._in_flight:
            self._set()
        if not same_unit:
            self.remove()
            self.controls = []
            self.make()
            return True
        if self._unit:
            self._unit.Model.Label = piece["unit"]
        if self._choice:
            self._choice.update(piece["unit"])
        return relabelled

    def place_control(self, x, y, width):
        height = self._edit.getPreferredSize().Height
        if self._choice:
            beside = min(self._choice.preferred_width(), width * 0.5)
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
            self.make_control()
        else:
            super().make()

    def tabbed(self):
        return [self._list]

    def make_control(self):
        self._list = self.add("ListBox", Dropdown=True, HelpText=self.piece["label"])
        self._set()
        self._list.addItemListener(self.listen(self._list, self._chosen))

    def _set(self):
        piece, model = self.piece, self._list.Model
        with self.drawing.quietly():
            shown = tuple(piece["shown"])
            if tuple(model.StringItemList) != shown:
                model.StringItemList = shown
            chosen = (piece["values"].index(piece["value"]),) if piece["value"] in piece["values"] else ()
            if tuple(model.SelectedItems) != chosen:
                model.SelectedItems = chosen
            model.Enabled = not piece.get("disabled")

    def _chosen(self):
        if self.drawing.quiet:
            return
        at = self._list.getSelectedItemPos()
        if at >= 0:
            value = self.piece["values"][at]
            self.drawing.happened({"kind": "type", "field": self.piece["field"], "value": value})

    def update(self, piece):
        relabelled = not self._bare and self.relabel(piece)
        self.piece = piece
        self._set()
        return relabelled

    def preferred_width(self):
        return self._list.getPreferredSize().Width

    def place_control(self, x, y, width):
        height = self._list.getPreferredSize().Height
        place(self._list, x, y, width, height)
        return height


class Toggle(Piece):
    def make(self):
        self._box = self.add("CheckBox", MultiLine=True)
        self._set()
        self._box.addItemListener(self.listen(self._box, self._changed))

    def _set(self):
        with self.drawing.quietly():
            model = self._box.Model
            model.Label = self.piece["label"]
            model.State = 1 if self.piece["on"] else 0
            model.Enabled = not self.piece.get("disabled")

    def _changed(self):
        if not self.drawing.quiet:
            value = "yes" if self._box.State == 1 else ""
            self.drawing.happened({"kind": "type", "field": self.piece["field"], "value": value})

    def update(self, piece):
        self.piece = piece
        self._set()
        return False

    def place(self, x, y, width):
        height = wrapped_height(self._box, self.piece["label"], width)
        place(self._box, x, y, width, height)
        return height


class Buttons(Piece):
    """Buttons beside each other, on as many lines as they need."""

    def make(self):
        for index, button in enumerate(self.piece["buttons"]):
            control = self.add("Button", Label=button["label"])
            control.addActionListener(self.listen(control, lambda index=index: self._pressed(index)))
        self._set()

    def _set(self):
        for control, button in zip(self.controls, self.piece["buttons"]):
            model = control.Model
            model.Label = button["label"]
            model.HelpText = button.get("help") or ""
            model.Enabled = not button.get("disabled")
            model.DefaultButton = bool(button.get("primary"))
            model.FontWeight = _BOLD if button.get("primary") or button.get("current") else 100.0

    def _pressed(self, index):
        # A list that shrank meanwhile has no such button any more.
        if index < len(self.piece["buttons"]):
            self.drawing.happened(self.piece["buttons"][index]["event"])

    def update(self, piece):
        if piece == self.piece:
            return False
        fewer_or_more = len(piece["buttons"]) != len(self.piece["buttons"])
        self.piece = piece
        if fewer_or_more:
            self.remove()
            self.controls = []
            self.make()
        else:
            self._set()
        return True

    def place(self, x, y, width):
        left, top, tallest = x, y, 0
        for control in self.controls:
            size = control.getPreferredSize()
            wide = min(size.Width, width)
            if left > x and left + wide > x + width:
                left, top, tallest = x, top + tallest + GAP / 2, 0
            place(control, left, top, wide, size.Height)
            left += wide + GAP / 2
            tallest = max(tallest, size.Height)
        return top + tallest - y


class Picture(Piece):
    def make(self):
        self._image = self.add("ImageControl", Border=0, ScaleImage=True, Tabstop=False)
        self._set()

    def _set(self):
        self._image.Model.Graphic = graphic_of(self.piece["svg"])
        self._image.Model.HelpText = self.piece["label"]

    def tabbed(self):
        return []

    def update(self, piece):
        if piece != self.piece:
            self.piece = piece
            self._set()
        return False

    def place(self, x, y, width):
        size = self._image.Model.Graphic.SizePixel
        height = width * size.Height / max(size.Width, 1)
        place(self._image, x, y, width, height)
        return height


class Progress(Piece):
    def make(self):
        self._bar = self.add("ProgressBar", ProgressValueMin=0, ProgressValueMax=1000)
        self._set()

    def _set(self):
        self._bar.Model.ProgressValue = int(self.piece["share"] * 1000)
        self._bar.Model.HelpText = self.piece["label"]

    def tabbed(self):
        return []

    def update(self, piece):
        self.piece = piece
        self._set()
        return False

    def place(self, x, y, width):
        place(self._bar, x, y, width, GAP * 2)
        return GAP * 2


class Rule(Piece):
    def make(self):
        self._line = self.add("FixedLine")

    def tabbed(self):
        return []

    def place(self, x, y, width):
        place(self._line, x, y, width, GAP)
        return GAP


class Grid(Piece):
    """A table of words and numbers, which scrolls by itself where it is wider or longer than the panel."""

    def make(self):
        self._grid = self.add("grid.UnoControlGrid", ShowColumnHeader=True, HScroll=True)
        self._grid.Model.HelpText = self.piece["label"]
        self._columns()
        self._rows()

    def _columns(self):
        self._widths = []
        columns = self._grid.Model.ColumnModel
        while columns.ColumnCount:
            columns.removeColumn(0)
        for index, heading in enumerate(self.piece["columns"]):
            column = columns.createColumn()
            column.Title = heading["label"]
            longest = max([len(heading["label"])] + [len(row[index]) for row in self.piece["rows"]])
            column.Flexibility = 0
            column.ColumnWidth = longest * _GRID_LETTER + _GRID_CELL
            column.HorizontalAlign = RIGHT if heading["numeric"] else LEFT
            columns.addColumn(column)
            self._widths.append(column.ColumnWidth)

    def _rows(self):
        data = self._grid.Model.GridDataModel
        data.removeAllRows()
        rows = tuple(tuple(row) for row in self.piece["rows"])
        data.addRows(tuple(range(1, len(rows) + 1)), rows)

    def update(self, piece):
        if piece == self.piece:
            return False
        self.piece = piece
        self._columns()
        self._rows()
        return True

    def place(self, x, y, width):
        row = self._grid.Model.RowHeight or self.drawing.line_height + GAP
        shown = min(len(self.piece["rows"]), _GRID_MOST_ROWS) + 1
        bar = _GRID_BAR if sum(self._widths) * _PIXELS > width else 0
        height = shown * row + bar + GAP
        place(self._grid, x, y, width, height)
        return height


KINDS = {
    "text": Text,
    "entry": Entry,
    "choice": Choice,
    "toggle": Toggle,
    "buttons": Buttons,
    "grid": Grid,
    "picture": Picture,
    "progress": Progress,
    "rule": Rule,
}

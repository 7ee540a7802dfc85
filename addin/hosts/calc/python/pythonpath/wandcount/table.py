"""A table of words and numbers, each cell a text of its own.

The office's own grid control is not used: what LibreOffice 7.4 tells screen readers of it is freed twice, so that the
office hangs or crashes some time after such a control is taken away. It also draws no second line in a cell.
"""

from .controls import GAP, place, wrapped_height
from .piece import Piece

_BOLD = 150.0
_LEFT, _RIGHT = 0, 2

# Letters differ in width, so a text that is broken may need a little more than its mean letter tells.
_SURE = 0.93


def _longest(parts):
    return max((len(part) for part in parts), default=0)


class _Cell:
    """A text with the widths it can do with: that of its longest line, and that of its longest word."""

    def __init__(self, control):
        self.control = control
        self.words = ""

    def set(self, words):
        self.words = words
        self.control.Model.Label = words
        self.widest = self.control.getPreferredSize().Width
        letter = self.widest / max(_longest(words.split("\n")), 1)
        self.narrowest = min(_longest(words.split()) * letter / _SURE, self.widest)

    def height(self, width):
        if width >= self.widest:
            return self.control.getPreferredSize().Height
        return wrapped_height(self.control, self.words, width * _SURE)


def column_widths(widest, narrowest, width):
    """Each column's width: what it wants where there is room, else room is shared; None where words would be cut."""
    if sum(widest) <= width:
        return widest
    spare = width - sum(narrowest)
    if spare < 0:
        return None
    wish = sum(widest) - sum(narrowest)
    return [least + spare * (most - least) / wish for most, least in zip(widest, narrowest)]


class Table(Piece):
    """Columns beside each other; where the panel is too narrow for them, each row stands by itself, cell under cell."""

    def make(self):
        columns = self.piece["columns"]
        self._head = [self._cell(column, FontWeight=_BOLD) for column in columns]
        self._line = self.add("FixedLine")
        self._rows = [[self._cell(column) for column in columns] for _ in self.piece["rows"]]
        self._stacked = None
        self._set(False)

    def _cell(self, column, **look):
        align = _RIGHT if column["numeric"] else _LEFT
        return _Cell(self.add("FixedText", MultiLine=True, Align=align, **look))

    def _set(self, stacked):
        """Puts the words into the cells; in a row by itself each has its heading before it."""
        self._stacked = stacked
        columns = self.piece["columns"]
        for cell, column in zip(self._head, columns):
            cell.set(column["label"])
        for cells, row in zip(self._rows, self.piece["rows"]):
            for index, (cell, column, words) in enumerate(zip(cells, columns, row)):
                named = stacked and index > 0 and words and column["label"]
                cell.set(f"{column['label']}: {words}" if named else words)
                model = cell.control.Model
                model.Align = _RIGHT if column["numeric"] and not stacked else _LEFT
                model.FontWeight = _BOLD if stacked and index == 0 else 100.0

    def tabbed(self):
        return []

    def update(self, piece):
        if piece == self.piece:
            return False
        alike = piece["columns"] == self.piece["columns"] and len(piece["rows"]) == len(self.piece["rows"])
        self.piece = piece
        if alike:
            self._set(self._stacked)
        else:
            self.remove()
            self.controls = []
            self.make()
        return True

    def place(self, x, y, width):
        widths = self._widths(width)
        if self._stacked != (widths is None):
            self._set(widths is None)
        for control in self._headed():
            control.setVisible(widths is not None)
        return self._place_stacked(x, y, width) if widths is None else self._place_columns(x, y, widths)

    def _headed(self):
        return [self._line, *(cell.control for cell in self._head)]

    def _widths(self, width):
        if self._stacked:
            # The cells hold their headings as well now.
            self._set(False)
        columns = list(zip(self._head, *self._rows))
        room = width - GAP * (len(columns) - 1)
        widest = [max(cell.widest for cell in cells) for cells in columns]
        narrowest = [max(cell.narrowest for cell in cells) for cells in columns]
        return column_widths(widest, narrowest, room)

    def _place_columns(self, x, y, widths):
        top = y
        for cells in [self._head, *self._rows]:
            left = x
            heights = [cell.height(width) for cell, width in zip(cells, widths)]
            for cell, width, height in zip(cells, widths, heights):
                place(cell.control, left, top, width, height)
                left += width + GAP
            top += max(heights) + GAP / 2
            if cells is self._head:
                place(self._line, x, top - GAP / 2, left - GAP - x, GAP)
                top += GAP / 2
        return top - y

    def _place_stacked(self, x, y, width):
        for control in self._headed():
            place(control, x, y, 0, 0)
        top = y
        for cells in self._rows:
            for cell in cells:
                height = cell.height(width) if cell.words else 0
                place(cell.control, x, top, width, height)
                top += height
            top += GAP
        return top - y

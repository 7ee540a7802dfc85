"""A table of words and numbers, each cell a text of its own.

The office's own grid control is not used: what LibreOffice 7.4 tells screen readers of it is freed twice, so that the
office hangs or crashes some time after such a control is taken away. It also draws no second line in a cell.
"""

from .controls import GAP, longest_word, place, wrapped_height
from .piece import Piece

_BOLD = 150.0
_LEFT, _RIGHT = 0, 2

# Beside what the office measures of a word, so that it does not break within it.
_SURE = 2

# Between columns where there is room, pixels.
_WIDEST_GAP = 3 * GAP


class _Cell:
    """A text with the widths it can do with: that of its longest line, and that of its longest word."""

    def __init__(self, control):
        self.control = control
        self.words = None
        self._measured = {}

    def set(self, words):
        if words == self.words:
            return
        self.words = words
        self.control.Model.Label = words
        if words not in self._measured:
            widest = self.control.getPreferredSize().Width
            self._measured[words] = widest, min(longest_word(self.control, words) + _SURE, widest)
        self.widest, self.narrowest = self._measured[words]

    def height(self, width):
        return wrapped_height(self.control, width)


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
        columns = self.piece.columns
        self._head = [self._cell(column, FontWeight=_BOLD) for column in columns]
        self._line = self.add("FixedLine")
        self._rows = [[self._cell(column) for column in columns] for _ in self.piece.rows]
        self._stacked = None
        self._set(False)

    def _cell(self, column, **look):
        align = _RIGHT if column.numeric else _LEFT
        return _Cell(self.add("FixedText", MultiLine=True, Align=align, **look))

    def _set(self, stacked):
        """Puts the words into the cells; in a row by itself each has its heading before it."""
        self._stacked = stacked
        columns = self.piece.columns
        for cell, column in zip(self._head, columns):
            cell.set(column.label)
        for cells, row in zip(self._rows, self.piece.rows):
            for index, (cell, column, words) in enumerate(zip(cells, columns, row)):
                cell.set(self._named(column.label, words, index) if stacked else words)
                model = cell.control.Model
                model.Align = _RIGHT if column.numeric and not stacked else _LEFT
                model.FontWeight = _BOLD if stacked and index == 0 else 100.0

    def _named(self, heading, words, index):
        """A cell with its heading; a name at the front of a row needs none, a number there does."""
        if not words or not heading or (index == 0 and not words[0].isdigit()):
            return words
        return f"{heading}:\n{words}" if "\n" in words else f"{heading}: {words}"

    def tabbed(self):
        return []

    def update(self, piece):
        if piece == self.piece:
            return False
        alike = piece.columns == self.piece.columns and len(piece.rows) == len(self.piece.rows)
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
        between = max(len(columns) - 1, 1)
        widest = [max(cell.widest for cell in cells) for cells in columns]
        narrowest = [max(cell.narrowest for cell in cells) for cells in columns]
        self._gap = min(max((width - sum(widest)) / between, GAP), _WIDEST_GAP)
        return column_widths(widest, narrowest, width - self._gap * (len(columns) - 1))

    def _place_columns(self, x, y, widths):
        top = y
        for cells in [self._head, *self._rows]:
            left = x
            heights = [cell.height(width) for cell, width in zip(cells, widths)]
            for cell, width, height in zip(cells, widths, heights):
                place(cell.control, left, top, width, height)
                left += width + self._gap
            top += max(heights) + GAP / 2
            if cells is self._head:
                place(self._line, x, top - GAP / 2, left - self._gap - x, GAP)
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

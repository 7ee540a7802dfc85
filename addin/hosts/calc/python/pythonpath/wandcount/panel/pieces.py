"""Each kind of piece of a view, drawn with controls of the office."""

from .controls import GAP, graphic_of, place, words_width, wrapped_height
from .field_pieces import Choice, Entry, Toggle
from .piece import Piece
from .shades import shade
from .table import Table

_BOLD = 150.0
_BOLD_TONES = ("title", "answer", "heading", "warning", "error")
_SIGNS = {"warning": "⚠ ", "error": "⚠ ", "good": "✓ "}
_TITLE_SIZE = 1.35


class Text(Piece):
    def make(self):
        self._text = self.add("FixedText", MultiLine=True)
        self._set()

    def _set(self):
        tone = self.piece.tone
        model = self._text.Model
        model.Label = _SIGNS.get(tone, "") + self.piece.text
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
        if piece.tone != self.piece.tone:
            self.remove()
            self.controls = []
            self.piece = piece
            self.make()
            return True
        self.piece = piece
        self._set()
        return True

    def place(self, x, y, width):
        above = GAP if self.piece.tone == "heading" else 0
        height = wrapped_height(self._text, width)
        place(self._text, x, y + above, width, height)
        return above + height


class Buttons(Piece):
    """Buttons beside each other, on as many lines as they need."""

    def make(self):
        for index, button in enumerate(self.piece.buttons):
            control = self.add("Button", Label=button.label, MultiLine=True)
            control.addActionListener(self.listen(control, lambda index=index: self._pressed(index)))
        self._set()

    def _set(self):
        for control, button in zip(self.controls, self.piece.buttons):
            model = control.Model
            model.Label = button.label
            model.HelpText = button.help or ""
            model.Enabled = not button.disabled
            model.DefaultButton = bool(button.primary)
            model.FontWeight = _BOLD if button.primary or button.current else 100.0

    def _pressed(self, index):
        # A list that shrank meanwhile has no such button any more.
        if index < len(self.piece.buttons):
            self.drawing.happened(self.piece.buttons[index].event)

    def update(self, piece):
        if piece == self.piece:
            return False
        fewer_or_more = len(piece.buttons) != len(self.piece.buttons)
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
            # The preferred width has much beside the label: in a narrow panel no two would stand side by side.
            least, tall = control.getMinimumSize().Width, control.getPreferredSize().Height
            wide = min(least, width)
            if left > x and left + wide > x + width:
                left, top, tallest = x, top + tallest + GAP / 2, 0
            high = tall if wide == least else tall + self._lines_more(control, wide)
            place(control, left, top, wide, high)
            left += wide + GAP / 2
            tallest = max(tallest, high)
        return top + tallest - y

    def _lines_more(self, control, width):
        """What a label is higher than in one line: a button by itself tells only of that one."""
        model, least = control.Model, control.getMinimumSize().Width
        room = width - (least - words_width(control, model.Label))
        one, all_lines = (self.drawing.height_of(model.Label, w, model.FontWeight) for w in (least, room))
        return all_lines - one


class Picture(Piece):
    def make(self):
        self._image = self.add("ImageControl", Border=0, ScaleImage=True, Tabstop=False)
        self._set()

    def _set(self):
        self._shown = None
        self._image.Model.HelpText = self.piece.label
        # A picture has no label; the text of its window is what it is called.
        self._image.getPeer().setProperty("Label", self.piece.label)

    def tabbed(self):
        return []

    def update(self, piece):
        if piece == self.piece:
            return False
        self.piece = piece
        self._set()
        return True

    def place(self, x, y, width):
        drawn = [one for one in self.piece.drawn if one.width <= width] or self.piece.drawn[:1]
        if drawn[-1] is not self._shown:
            self._shown = drawn[-1]
            self._image.Model.Graphic = graphic_of(self._shown.svg)
        size = self._image.Model.Graphic.SizePixel
        height = width * size.Height / max(size.Width, 1)
        place(self._image, x, y, width, height)
        return height


class Progress(Piece):
    def make(self):
        self._bar = self.add("ProgressBar", ProgressValueMin=0, ProgressValueMax=1000)
        self._set()

    def _set(self):
        self._bar.Model.ProgressValue = int(self.piece.share * 1000)
        self._bar.Model.HelpText = self.piece.label

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


KINDS = {
    "text": Text,
    "entry": Entry,
    "choice": Choice,
    "toggle": Toggle,
    "buttons": Buttons,
    "table": Table,
    "picture": Picture,
    "progress": Progress,
    "rule": Rule,
}

"""What cells hold and how their numbers are shown."""

import uno
from com.sun.star.sheet.FillDirection import TO_BOTTOM
from com.sun.star.util.NumberFormat import LOGICAL

from .empty_again import empty_again
from .reading import cell_range, truths

_GENERAL = 0


def _locale():
    return uno.createUnoStruct("com.sun.star.lang.Locale", "en", "US", "")


def _forget_truths(document, cells):
    """A number in a cell that showed TRUE or FALSE would show as one of them."""
    for row, column, rows, columns in truths(document, cells):
        shown = cell_range(document, [cells.Spreadsheet.Name, row, column, rows, columns])
        shown.NumberFormat = _GENERAL


def put_values(document, op, words):
    """Numbers and texts; text stays text, whatever it begins with. None empties a cell."""
    cells = cell_range(document, op.area)
    _forget_truths(document, cells)
    empty_again(document, cells)
    cells.setDataArray(
        tuple(tuple("" if value is None else value for value in line) for line in op.cells)
    )


def put_truths(document, op, words):
    """TRUE and FALSE are numbers that are shown in words."""
    cells = cell_range(document, op.area)
    cells.NumberFormat = document.NumberFormats.getStandardFormat(LOGICAL, _locale())
    empty_again(document, cells)
    cells.setDataArray(tuple(tuple(float(value) for value in line) for line in op.cells))


def put_formulas(document, op, words):
    """Formulas in the words that every host knows."""
    cells = cell_range(document, op.area)
    at = cells.RangeAddress
    _forget_truths(document, cells)
    empty_again(document, cells)
    cells.setFormulaArray(
        tuple(
            tuple(
                words.own(formula, at.Sheet, at.StartRow + r, at.StartColumn + c)
                for c, formula in enumerate(line)
            )
            for r, line in enumerate(op.cells)
        )
    )


def put_filled(document, op, words):
    """A row of formulas copied down. Copying takes the cells' looks along, so cells of one look go together."""
    cells = cell_range(document, op.area)
    _forget_truths(document, cells)
    empty_again(document, cells)
    sheet, row, column, rows, _ = op.area
    for c, formula in enumerate(op.formulas, column):
        groups = cell_range(document, [sheet, row, c, rows, 1]).getUniqueCellFormatRanges()
        for at in (address for index in range(groups.Count) for address in groups.getByIndex(index).RangeAddresses):
            part = cell_range(document, [sheet, at.StartRow, c, at.EndRow - at.StartRow + 1, 1])
            part.getCellByPosition(0, 0).Formula = words.own_below(formula, at.Sheet, row, c, at.StartRow)
            part.fillAuto(TO_BOTTOM, 1)


def put_format(document, op, words):
    """A number format in English words."""
    formats = document.NumberFormats
    key = formats.queryKey(op.format, _locale(), False)
    if key < 0:
        key = formats.addNew(op.format, _locale())
    cell_range(document, op.area).NumberFormat = key

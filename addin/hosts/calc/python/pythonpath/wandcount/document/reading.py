"""What a document holds, as plain lists that cross the pipe."""

import hashlib
import json

from com.sun.star.sheet.CellFlags import DATETIME, FORMULA, STRING, VALUE
from com.sun.star.sheet.FormulaResult import ERROR
from com.sun.star.util.NumberFormat import LOGICAL

from .formula_words import FormulaWords
from .sheet_view import shows_cells

_CONTENT = VALUE | DATETIME | STRING | FORMULA


def _corner(address):
    return [
        address.StartRow,
        address.StartColumn,
        address.EndRow - address.StartRow + 1,
        address.EndColumn - address.StartColumn + 1,
    ]


def _used(sheet):
    """Rows and columns from A1 to the last cell that holds something."""
    addresses = sheet.queryContentCells(_CONTENT).RangeAddresses
    if not addresses:
        return 0, 0
    return max(a.EndRow for a in addresses) + 1, max(a.EndColumn for a in addresses) + 1


def _merges(sheet):
    """Merged areas. Merging is a format, so cells alike are looked at once."""
    found = []
    groups = sheet.getUniqueCellFormatRanges()
    for index in range(groups.Count):
        alike = groups.getByIndex(index)
        first = alike.RangeAddresses[0]
        if not sheet.getCellByPosition(first.StartColumn, first.StartRow).IsMerged:
            continue
        for address in alike.RangeAddresses:
            for row in range(address.StartRow, address.EndRow + 1):
                for column in range(address.StartColumn, address.EndColumn + 1):
                    cell = sheet.getCellByPosition(column, row)
                    if cell.IsMerged:
                        cursor = sheet.createCursorByRange(cell)
                        cursor.collapseToMergedArea()
                        found.append(_corner(cursor.RangeAddress))
    return found


def _names(document):
    names = document.NamedRanges
    found = {}
    for name in names.ElementNames:
        cells = names.getByName(name).getReferredCells()
        if cells is not None and hasattr(cells, "RangeAddress"):
            sheet = document.Sheets.getByIndex(cells.RangeAddress.Sheet).Name
            found[name] = [sheet, *_corner(cells.RangeAddress)]
    return found


def active_sheet(document):
    controller = document.CurrentController
    return controller.ActiveSheet if shows_cells(controller) else document.Sheets.getByIndex(0)


def _outline(document):
    """Sheets with the cells in use, names, and the active sheet."""
    sheets = []
    for index in range(document.Sheets.Count):
        sheet = document.Sheets.getByIndex(index)
        rows, columns = _used(sheet)
        sheets.append({"name": sheet.Name, "rows": rows, "columns": columns, "merges": _merges(sheet)})
    return {"sheets": sheets, "names": _names(document), "active": active_sheet(document).Name}


def cell_range(document, area):
    sheet, row, column, rows, columns = area
    return document.Sheets.getByName(sheet).getCellRangeByPosition(
        column, row, column + columns - 1, row + rows - 1
    )


def _copied_down(line):
    """True where every cell of a column has the first one's formula, as copying moves it."""
    first = line.getCellByPosition(0, 0).CellAddress
    return line.queryColumnDifferences(first).Count == 0


def _formulas(cells, words, singly):
    """Formulas by cell, and, unless they are wanted singly, those of whole columns by their first and last cell."""
    single, copied = [], []
    for part in cells.queryContentCells(FORMULA):
        at = part.RangeAddress
        for column in range(at.StartColumn, at.EndColumn + 1):
            line = part.getCellRangeByPosition(column - at.StartColumn, 0, column - at.StartColumn, at.EndRow - at.StartRow)
            texts = [text for text, in line.getFormulaArray()]

            def common(row):
                return words.common(texts[row - at.StartRow], at.Sheet, row, column)

            if not singly and at.EndRow > at.StartRow + 1 and _copied_down(line):
                ends = common(at.StartRow), common(at.EndRow)
                copied.append([at.StartRow, column, at.EndRow - at.StartRow + 1, *ends])
            else:
                single.extend([row, column, common(row)] for row in range(at.StartRow, at.EndRow + 1))
    return single, copied


def _errors(cells):
    found = []
    for part in cells.queryFormulaCells(ERROR):
        address = part.RangeAddress
        for r in range(address.EndRow - address.StartRow + 1):
            for c in range(address.EndColumn - address.StartColumn + 1):
                code = part.getCellByPosition(c, r).getError()
                found.append([address.StartRow + r, address.StartColumn + c, code])
    return found


def truths(document, cells):
    """Areas whose numbers are shown as TRUE and FALSE."""
    formats = document.NumberFormats
    found = []
    groups = cells.getUniqueCellFormatRanges()
    for index in range(groups.Count):
        alike = groups.getByIndex(index)
        if formats.getByKey(alike.getByIndex(0).NumberFormat).Type & LOGICAL:
            found.extend(_corner(address) for address in alike.RangeAddresses)
    return found


def _read(document, area, words, singly):
    """An area's values, and by row and column of the sheet: formulas, errors, areas of truth values."""
    cells = cell_range(document, area)
    formulas, copied = _formulas(cells, words, singly)
    return {
        "used": area[1:],
        "values": cells.getDataArray(),
        "formulas": formulas,
        "copied": copied,
        "errors": _errors(cells),
        "truths": truths(document, cells),
    }


def _in_use(told, areas):
    """Of each area the part that holds anything, or None."""
    sheets = {sheet["name"]: sheet for sheet in told["sheets"]}
    parts = []
    for name, row, column, rows, columns in areas:
        used = sheets.get(name, {"rows": 0, "columns": 0})
        rows, columns = min(rows, used["rows"] - row), min(columns, used["columns"] - column)
        parts.append([name, row, column, rows, columns] if rows > 0 and columns > 0 else None)
    return parts


def _stamp(document, told, areas, parts):
    read = {area[0] for area in areas}
    places = [sheet if sheet["name"] in read else sheet["name"] for sheet in told["sheets"]]
    entries = [part and cell_range(document, part).getFormulaArray() for part in parts]
    kept = json.dumps([places, told["names"], areas, entries], sort_keys=True)
    return hashlib.sha256(kept.encode()).hexdigest()


def stamp(document, areas):
    """Another one where a user's hand changed sheets, names or cells of the areas; results of formulas are not in it."""
    told = _outline(document)
    return _stamp(document, told, areas, _in_use(told, areas))


def look(document, areas, singly):
    """Outline and areas of one moment, with their stamp."""
    told, words = _outline(document), FormulaWords(document)
    parts = _in_use(told, areas)
    return {
        "outline": told,
        "cells": [part and _read(document, part, words, singly) for part in parts],
        "stamp": _stamp(document, told, areas, parts),
    }

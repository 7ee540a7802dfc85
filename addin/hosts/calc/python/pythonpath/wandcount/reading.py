"""What a document holds, as plain lists that cross the pipe."""

from com.sun.star.sheet.CellFlags import DATETIME, FORMULA, STRING, VALUE
from com.sun.star.sheet.FormulaResult import ERROR
from com.sun.star.util.NumberFormat import LOGICAL

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
    return controller.ActiveSheet if controller else document.Sheets.getByIndex(0)


def outline(document):
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


def _formulas(cells, words):
    found = []
    for part in cells.queryContentCells(FORMULA):
        address = part.RangeAddress
        for r, line in enumerate(part.getFormulaArray(), address.StartRow):
            for c, formula in enumerate(line, address.StartColumn):
                found.append([r, c, words.common(formula, address.Sheet, r, c)])
    return found


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


def read(document, area, words):
    """An area's values, and by row and column of the sheet: formulas, errors, areas of truth values."""
    cells = cell_range(document, area)
    return {
        "values": cells.getDataArray(),
        "formulas": _formulas(cells, words),
        "errors": _errors(cells),
        "truths": truths(document, cells),
    }

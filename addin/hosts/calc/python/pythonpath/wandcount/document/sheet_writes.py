"""Sheets and what lies on their cells: looks, widths, rules, names, notes, merges, pages, the view."""

import uno
from com.sun.star.sheet.ValidationAlertStyle import STOP
from com.sun.star.sheet.ValidationType import LIST
from com.sun.star.table import CellAddress

from .ordinary_font import column_width
from .reading import cell_range
from .sheet_view import sheet_view


def put_sheet(document, op, words):
    document.Sheets.insertNewByName(op.sheet, document.Sheets.Count)


def put_width(document, op, words):
    columns = document.Sheets.getByName(op.sheet).Columns
    width = column_width(document, op.characters)
    for column in range(op.column, op.column + op.columns):
        columns.getByIndex(column).Width = width


def _property(value):
    """A line around cells comes as its colour and widths; everything else as it is."""
    if not isinstance(value, dict):
        return value
    line = uno.createUnoStruct("com.sun.star.table.BorderLine2")
    for name, part in value.items():
        setattr(line, name, part)
    return line


def put_look(document, op, words):
    """A cell style of the user's own list, so that he may alter what a heading looks like."""
    styles = document.StyleFamilies.getByName("CellStyles")
    name = op.name
    if not styles.hasByName(name):
        styles.insertByName(name, document.createInstance("com.sun.star.style.CellStyle"))
        style = styles.getByName(name)
        for key, value in op.look.items():
            setattr(style, key, _property(value))
    cell_range(document, op.area).CellStyle = name


def put_wrap(document, op, words):
    cell_range(document, op.area).IsTextWrapped = True


def put_merge(document, op, words):
    cell_range(document, op.area).merge(True)


def put_list(document, op, words):
    cells = cell_range(document, op.area)
    rule = cells.Validation
    rule.Type = LIST
    if op.source:
        rule.setFormula1(cell_range(document, op.source).AbsoluteName)
    else:
        rule.setFormula1(op.entries)
    rule.ShowList = 1
    rule.ErrorAlertStyle = STOP
    rule.ErrorMessage = op.message
    rule.ShowErrorMessage = True
    cells.Validation = rule


def put_name(document, op, words):
    names = document.NamedRanges
    content = cell_range(document, op.area).AbsoluteName
    known = {name.lower(): name for name in names.ElementNames}
    if op.name.lower() in known:
        names.getByName(known[op.name.lower()]).setContent(content)
    else:
        names.addNewByName(op.name, content, CellAddress(0, 0, 0), 0)


def put_note(document, op, words):
    sheet = document.Sheets.getByName(op.sheet)
    at = sheet.getCellByPosition(op.column, op.row).CellAddress
    sheet.Annotations.insertNew(at, op.text)


def put_page(document, op, words):
    """One page wide, and no more high than asked; its rows of headings on every page.

    The page style itself is no part of the undo.
    """
    sheet = document.Sheets.getByName(op.area[0])
    styles = document.StyleFamilies.getByName("PageStyles")
    name = op.name
    if not styles.hasByName(name):
        styles.insertByName(name, document.createInstance("com.sun.star.style.PageStyle"))
    style = styles.getByName(name)
    if style.IsLandscape != op.landscape:
        style.IsLandscape = op.landscape
        style.Width, style.Height = style.Height, style.Width
    style.ScaleToPagesX = 1
    style.ScaleToPagesY = op.pagesHigh
    for side in ("Left", "Right", "Top", "Bottom"):
        # In hundredths of a millimetre.
        setattr(style, side + "Margin", op.margin * 100)
    style.HeaderIsOn = False
    style.FooterIsOn = False
    sheet.PageStyle = name
    area = cell_range(document, op.area).RangeAddress
    sheet.setPrintAreas((area,))
    sheet.setPrintTitleRows(op.repeatRows > 0)
    if op.repeatRows > 0:
        headings = sheet.getCellRangeByPosition(0, area.StartRow, 0, area.StartRow + op.repeatRows - 1)
        sheet.setTitleRows(headings.RangeAddress)


def put_freeze(document, op, words):
    """Freezing belongs to the view of a sheet, which must be the active one for it; no part of the undo."""
    controller = sheet_view(document)
    active = controller.ActiveSheet
    controller.setActiveSheet(document.Sheets.getByName(op.sheet))
    controller.freezeAtPosition(op.columns, op.rows)
    controller.setActiveSheet(active)


def put_active(document, op, words):
    sheet = document.Sheets.getByName(op.sheet)
    controller = sheet_view(document)
    controller.setActiveSheet(sheet)
    controller.select(sheet.getCellByPosition(op.column, op.row))

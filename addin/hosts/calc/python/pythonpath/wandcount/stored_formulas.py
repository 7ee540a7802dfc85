"""Formulas as office suites with the other kind of add-in store them, put right when a document is opened."""

import re

import unohelper
from com.sun.star.lang import XServiceInfo
from com.sun.star.sheet.CellFlags import FORMULA
from com.sun.star.task import XJob

from .log import log
from .open_documents import is_spreadsheet
from .places import NAMES
from .saved_elsewhere import saved_elsewhere

_SERVICES = (NAMES["openJob"],)

# What stands in quotes is somebody's text or a sheet's name.
_QUOTED = re.compile(r"""("(?:[^"]|"")*"|'(?:[^']|'')*')""")
_STORED = re.compile(rf"_xldudf_{NAMES['functions']}_([A-Za-z]+)(?=\s*\()", re.IGNORECASE)


def _renamed(part):
    return _STORED.sub(lambda m: f"{NAMES['functions']}.{m.group(1).upper()}", part)


def recognised(formula):
    """The formula with its functions under the names that Calc knows them by."""
    parts = _QUOTED.split(formula)
    return "".join(part if index % 2 else _renamed(part) for index, part in enumerate(parts))


def _sheet(sheet):
    for part in sheet.queryContentCells(FORMULA):
        address = part.RangeAddress
        for row, line in enumerate(part.getFormulaArray()):
            for column, formula in enumerate(line):
                if "_xldudf_" not in formula.lower():
                    continue
                better = recognised(formula)
                if better != formula:
                    cell = sheet.getCellByPosition(address.StartColumn + column, address.StartRow + row)
                    _put(cell, better)


def _put(cell, formula):
    if formula.startswith("{="):
        whole = cell.Spreadsheet.createCursorByRange(cell)
        whole.collapseToCurrentArray()
        whole.setArrayFormula(formula[1:-1])
    else:
        cell.Formula = formula


def put_right(document):
    """Leaves no trace on the undo, and the document as unmodified as it was."""
    undo = document.getUndoManager()
    modified = document.isModified()
    undo.lock()
    try:
        for index in range(document.Sheets.Count):
            _sheet(document.Sheets.getByIndex(index))
        if saved_elsewhere(document.URL):
            document.calculateAll()
    finally:
        undo.unlock()
    document.setModified(modified)


class StoredFormulas(unohelper.Base, XServiceInfo, XJob):
    def __init__(self, context):
        pass

    def execute(self, arguments):
        try:
            environment = next(a.Value for a in arguments if a.Name == "Environment")
            document = next((e.Value for e in environment if e.Name == "Model"), None)
            if is_spreadsheet(document):
                put_right(document)
        except Exception:
            # A document that cannot be put right is opened all the same.
            log.exception("stored formulas")

    def getImplementationName(self):
        return NAMES["openJob"]

    def supportsService(self, name):
        return name in _SERVICES

    def getSupportedServiceNames(self):
        return _SERVICES


IMPLEMENTATIONS = ((StoredFormulas, NAMES["openJob"], _SERVICES),)

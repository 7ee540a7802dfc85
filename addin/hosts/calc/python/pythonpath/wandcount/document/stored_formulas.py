"""Formulas as other programs store them, put right when a document is opened."""

import unohelper
from com.sun.star.lang import XServiceInfo
from com.sun.star.sheet.CellFlags import FORMULA
from com.sun.star.task import XJob

from ..office.log import log
from ..office.open_documents import is_spreadsheet
from ..office.places import NAMES
from .saved_elsewhere import signs_in
from .spelling import recognised

_SERVICES = (NAMES["openJob"],)


def _cells(sheet):
    for part in sheet.queryContentCells(FORMULA):
        address = part.RangeAddress
        for row, line in enumerate(part.getFormulaArray()):
            for column, formula in enumerate(line):
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


def _names(names):
    for name in map(names.getByName, names.ElementNames):
        better = recognised(name.Content)
        if better != name.Content:
            name.Content = better


def _rename(document):
    # The names first: a cell is computed with what its names are when it is put right.
    _names(document.NamedRanges)
    for sheet in map(document.Sheets.getByIndex, range(document.Sheets.Count)):
        _names(sheet.NamedRanges)
        _cells(sheet)


def put_right(document):
    """Leaves no trace on the undo, and the document as unmodified as it was."""
    signs = signs_in(document.URL)
    if not any(signs):
        return
    undo = document.getUndoManager()
    modified = document.isModified()
    undo.lock()
    try:
        if signs.other_names:
            _rename(document)
        if signs.old_values:
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

"""What LibreOffice's undo leaves behind: cells that were empty keep what was written to them in one go.

Seen in 7.4: undoing setDataArray or setFormulaArray puts old contents back and clears no cell that had none. A step of
our own, put on the undo before the writing and so undone after it, clears those cells.
"""

import unohelper
from com.sun.star.document import XUndoAction
from com.sun.star.sheet.CellFlags import DATETIME, FORMULA, STRING, VALUE

from ..office.log import log

_CONTENT = VALUE | DATETIME | STRING | FORMULA


class _EmptyAgain(unohelper.Base, XUndoAction):
    def __init__(self, document, sheet, addresses):
        self.Title = ""
        self._document = document
        # By name: a sheet that was undone and made again is another object.
        self._sheet = sheet
        self._addresses = addresses

    def undo(self):
        try:
            self._clear()
        except Exception:
            log.exception("undo")
            raise

    def _clear(self):
        undo = self._document.getUndoManager()
        undo.lock()
        try:
            sheet = self._document.Sheets.getByName(self._sheet)
            for a in self._addresses:
                cells = sheet.getCellRangeByPosition(a.StartColumn, a.StartRow, a.EndColumn, a.EndRow)
                cells.clearContents(_CONTENT)
        finally:
            undo.unlock()

    def redo(self):
        pass


def empty_again(document, cells):
    """To be called before `cells` are written: their undo clears those that are empty now."""
    addresses = cells.queryEmptyCells().RangeAddresses
    if addresses:
        step = _EmptyAgain(document, cells.Spreadsheet.Name, addresses)
        document.getUndoManager().addUndoAction(step)

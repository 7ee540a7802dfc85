"""Tells when the user selects another cell."""

import unohelper
from com.sun.star.lang import DisposedException
from com.sun.star.uno import RuntimeException
from com.sun.star.view import XSelectionChangeListener

from ..office.main_thread import later
from .sheet_view import shows_cells


class _Selected(unohelper.Base, XSelectionChangeListener):
    def __init__(self, controller, happened):
        self._controller = controller
        self._happened = happened
        self._told = False
        self._last = None

    def selectionChanged(self, event):
        # Dragging over cells says so at every one of them.
        if not self._told:
            self._told = True
            later(self._tell)

    def _tell(self):
        self._told = False
        if not self._controller:
            return
        at = selected_cell(self._controller)
        if at and at != self._last:
            self._last = at
            sheet, row, column = at
            self._happened({"kind": "selected", "sheet": sheet, "row": row, "column": column})

    def disposing(self, event):
        self._controller = None


def selected_cell(controller):
    """Sheet, row and column of the first selected cell, or None where something else is selected."""
    if not shows_cells(controller):
        return None
    selection = controller.getSelection()
    if selection is not None and selection.supportsService("com.sun.star.sheet.SheetCellRanges"):
        selection = selection.getByIndex(0) if selection.Count else None
    if selection is None or not hasattr(selection, "RangeAddress"):
        return None
    address = selection.RangeAddress
    sheet = controller.Model.Sheets.getByIndex(address.Sheet)
    return sheet.Name, address.StartRow, address.StartColumn


def watch_selection(controller, happened):
    """Calls `happened` with an event until the returned function is called."""
    if not shows_cells(controller):
        return lambda: None
    listener = _Selected(controller, happened)
    controller.addSelectionChangeListener(listener)

    def unwatch():
        listener.disposing(None)
        try:
            controller.removeSelectionChangeListener(listener)
        except (DisposedException, RuntimeException):
            # The window is being closed and its controller is gone already.
            pass

    return unwatch

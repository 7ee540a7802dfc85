"""Writes to a document, whole or not at all, as one step of its undo."""

import unohelper
from com.sun.star.document import XUndoManagerListener

from .cell_writes import put_filled, put_format, put_formulas, put_truths, put_values
from .charts import put_chart
from .formula_words import FormulaWords
from .sheet_writes import (
    put_active,
    put_freeze,
    put_list,
    put_look,
    put_merge,
    put_name,
    put_note,
    put_page,
    put_sheet,
    put_width,
    put_wrap,
)
from .undoing import undo_step

_OPERATIONS = {
    "sheet": put_sheet,
    "values": put_values,
    "truths": put_truths,
    "formulas": put_formulas,
    "filled": put_filled,
    "format": put_format,
    "look": put_look,
    "width": put_width,
    "wrap": put_wrap,
    "merge": put_merge,
    "list": put_list,
    "name": put_name,
    "note": put_note,
    "chart": put_chart,
    "page": put_page,
}

_VIEW_OPERATIONS = {"freeze": put_freeze, "active": put_active}


class _Leaving(unohelper.Base, XUndoManagerListener):
    """Learns whether a step was left on the undo: one that changed nothing leaves none."""

    left = False

    def leftContext(self, event):
        self.left = True


# What else the manager tells is nothing to it.
for _told in (
    "undoActionAdded actionUndone actionRedone allActionsCleared redoActionsCleared resetAll enteredContext"
    " enteredHiddenContext leftHiddenContext cancelledContext disposing"
).split():
    setattr(_Leaving, _told, lambda self, event: None)


def _run(document, operations, kinds):
    words = FormulaWords(document)
    for op in operations:
        kinds[op.op](document, op, words)


def _is_view(op):
    return op.op in _VIEW_OPERATIONS


def _write(document, operations):
    # Within the step, of which it becomes a part: locked around it, the office crashes when a step that failed half
    # way is taken back, seen in 7.4.
    document.lockControllers()
    try:
        _run(document, [op for op in operations if not _is_view(op)], _OPERATIONS)
    finally:
        document.unlockControllers()


def apply(document, title, operations):
    """Every operation or none; what went wrong is raised after the document is as it was."""
    undo = document.getUndoManager()
    leaving = _Leaving()
    undo.enterUndoContext(title)
    failed = None
    try:
        _write(document, operations)
    except Exception as error:
        failed = error
    undo.addUndoManagerListener(leaving)
    try:
        undo.leaveUndoContext()
    finally:
        undo.removeUndoManagerListener(leaving)
    if not failed:
        # Only now: a view that goes to another sheet sets the undo's length anew, and while a step is open
        # that throws away the first of its parts where it has more than the user's number of steps.
        try:
            _run(document, list(filter(_is_view, operations)), _VIEW_OPERATIONS)
        except Exception as error:
            failed = error
    if failed:
        if leaving.left:
            undo_step(document)
            undo.clearRedo()
        raise failed

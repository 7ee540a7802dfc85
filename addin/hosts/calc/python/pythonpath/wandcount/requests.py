"""What the engine asks about a document, done on the main thread."""

from .document.formula_words import FormulaWords
from .document.locks import locks_on
from .document.reading import look, stamp
from .document.selection import selected_cell
from .document.sheet_view import sheet_view
from .document.undoing import undo_step
from .document.writing import apply
from .functions import engine_absent
from .office.open_documents import dispatch
from .office.places import NAMES


def _apply(document, request):
    """Writes where nothing stands in the way: no lock, no edit since the document was seen; tells what does."""
    sheet_view(document)
    in_the_way = locks_on(document, request.touched)
    seen = request.seen
    in_the_way["moved"] = seen is not None and stamp(document, seen.areas) != seen.stamp
    if not any(in_the_way.values()):
        apply(document, request.title, request.operations)
    return in_the_way


def _why(cell):
    """The words for why the cell's function gets no answer; nothing where it is not ours or gets one."""
    if not cell.getError() or NAMES["functions"] + "." not in cell.Formula.upper():
        return {}
    absent = engine_absent()
    return {"why": absent.words} if absent else {}


def _selected(document, request):
    """The selected cell, with its formula as the user types it, or None where it has none."""
    at = selected_cell(document.CurrentController)
    if not at:
        return None
    sheet, row, column = at
    cell = document.Sheets.getByName(sheet).getCellByPosition(column, row)
    if cell.Type.value != "FORMULA":
        return None
    place = {"sheet": sheet, "row": row, "column": column}
    return {**place, "typed": cell.FormulaLocal, "shows": cell.String, **_why(cell)}


def _print(document, request):
    """The office's own printing, which shows the page first."""
    controller = sheet_view(document)
    controller.setActiveSheet(document.Sheets.getByName(request.sheet))
    dispatch(controller.Frame, ".uno:Print")


_REQUESTS = {
    "read": lambda document, request: look(document, request.areas, request.singly),
    "apply": _apply,
    "undo": lambda document, request: undo_step(document),
    "selected": _selected,
    "print": _print,
}


def answer(document, request):
    """The plain value that the engine gets; what went wrong is raised."""
    return _REQUESTS[request.what](document, request)

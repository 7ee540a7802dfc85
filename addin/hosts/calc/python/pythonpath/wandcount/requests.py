"""What the engine asks about a document, done on the main thread."""

from com.sun.star.container import NoSuchElementException
from com.sun.star.lang import IllegalArgumentException

from .document.formula_words import FormulaWords
from .document.locks import locks_on
from .document.reading import outline, read
from .document.refused import Refused
from .document.selection import selected_cell
from .document.sheet_view import sheet_view
from .document.undoing import undo_step
from .document.writing import apply
from .functions import engine_absent
from .office.context import office_context
from .office.open_documents import dispatch
from .office.places import NAMES


def _read(document, request):
    words = FormulaWords(document)
    return [read(document, area, words, request.singly) for area in request.areas]


def _apply(document, request):
    """Writes where no lock stands in the way; tells which do."""
    sheet_view(document)
    locks = locks_on(document, request.touched)
    if not any(locks.values()):
        apply(document, request.title, request.operations)
    return locks


def _absent(cell):
    """The words for why the cell's function gets no answer, or None."""
    if not cell.getError() or NAMES["functions"] + "." not in cell.Formula.upper():
        return None
    absent = engine_absent()
    return absent and absent.words


def _selected(document, request):
    """The selected cell with its formula, in common words and as the user types it, or None where it has none."""
    at = selected_cell(document.CurrentController)
    if not at:
        return None
    sheet, row, column = at
    cell = document.Sheets.getByName(sheet).getCellByPosition(column, row)
    if cell.Type.value != "FORMULA":
        return None
    index = cell.CellAddress.Sheet
    return {
        "sheet": sheet,
        "row": row,
        "column": column,
        "formula": FormulaWords(document).common(cell.Formula, index, row, column),
        "typed": cell.FormulaLocal,
        "shows": cell.String,
        "failed": cell.getError() != 0,
        "absent": _absent(cell),
    }


def _compute(document, request):
    """A function of Calc's own, or of another extension, on plain values; refused where it takes none."""
    context = office_context()
    functions = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.sheet.FunctionAccess", context
    )
    arguments = tuple(
        tuple(tuple(line) for line in argument) if isinstance(argument, list) else argument
        for argument in request.args
    )
    try:
        return functions.callFunction(request.name, arguments)
    except (NoSuchElementException, IllegalArgumentException):
        raise Refused("notComputed") from None


def _print(document, request):
    """The office's own printing, which shows the page first."""
    controller = sheet_view(document)
    controller.setActiveSheet(document.Sheets.getByName(request.sheet))
    dispatch(controller.Frame, ".uno:Print")


_REQUESTS = {
    "outline": lambda document, request: outline(document),
    "read": _read,
    "apply": _apply,
    "undo": lambda document, request: undo_step(document),
    "selected": _selected,
    "compute": _compute,
    "print": _print,
}


def answer(document, request):
    """The plain value that the engine gets; what went wrong is raised."""
    return _REQUESTS[request.what](document, request)

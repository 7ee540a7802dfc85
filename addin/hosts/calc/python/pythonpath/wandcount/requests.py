"""What the engine asks about a document, done on the main thread."""


from .formula_words import FormulaWords
from .reading import outline, read
from .writing import apply


def _read(document, request):
    words = FormulaWords(document)
    return [read(document, area, words) for area in request["areas"]]


def _undo(document, request):
    document.getUndoManager().undo()


_REQUESTS = {
    "outline": lambda document, request: outline(document),
    "read": _read,
    "apply": lambda document, request: apply(document, request["title"], request["operations"]),
    "undo": _undo,
}


def answer(document, request):
    """The plain value that the engine gets; what went wrong is raised."""
    return _REQUESTS[request["what"]](document, request)

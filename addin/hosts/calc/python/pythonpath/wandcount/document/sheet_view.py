"""The view of a window that shows cells; with the print preview open it shows none."""

from .refused import Refused


def shows_cells(controller):
    return hasattr(controller, "ActiveSheet")


def sheet_view(document):
    """The view of the document's cells; Refused where its window shows something else."""
    controller = document.CurrentController
    if not shows_cells(controller):
        raise Refused("noSheet")
    return controller

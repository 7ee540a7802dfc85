"""The spreadsheets that are open."""

from .context import office_context


def desktop():
    context = office_context()
    return context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)


def is_spreadsheet(document):
    return hasattr(document, "supportsService") and document.supportsService(
        "com.sun.star.sheet.SpreadsheetDocument"
    )


def open_spreadsheets():
    components = desktop().getComponents().createEnumeration()
    found = []
    while components.hasMoreElements():
        document = components.nextElement()
        if is_spreadsheet(document):
            found.append(document)
    return found


def dispatch(frame, command):
    """Does what a menu entry of the office does."""
    context = office_context()
    helper = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.frame.DispatchHelper", context
    )
    helper.executeDispatch(frame, command, "", 0, ())

"""Lets the user choose a file with the office's own dialog."""

import uno
from com.sun.star.ui.dialogs.ExecutableDialogResults import OK
from com.sun.star.ui.dialogs.TemplateDescription import FILEOPEN_SIMPLE

from .context import office_context


def chosen_file(title):
    """The path that the user chose, or None."""
    context = office_context()
    picker = context.ServiceManager.createInstanceWithContext("com.sun.star.ui.dialogs.FilePicker", context)
    picker.initialize((FILEOPEN_SIMPLE,))
    picker.setTitle(title)
    if picker.execute() != OK:
        return None
    return uno.fileUrlToSystemPath(picker.getFiles()[0])

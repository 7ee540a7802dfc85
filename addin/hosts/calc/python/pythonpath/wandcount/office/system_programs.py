"""Opens a file with the program that the system has for it."""

import uno
from com.sun.star.system.SystemShellExecuteFlags import URIS_ONLY

from .context import office_context


def show_file(path):
    context = office_context()
    shell = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.system.SystemShellExecute", context
    )
    shell.execute(uno.systemPathToFileUrl(path), "", URIS_ONLY)

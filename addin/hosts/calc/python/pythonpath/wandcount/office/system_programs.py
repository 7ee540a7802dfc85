"""Opens a file with the program that the system has for it."""

import uno
from com.sun.star.system.SystemShellExecuteFlags import URIS_ONLY


def show_file(path):
    context = uno.getComponentContext()
    shell = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.system.SystemShellExecute", context
    )
    shell.execute(uno.systemPathToFileUrl(path), "", URIS_ONLY)

"""What LibreOffice loads: the list of this extension's UNO implementations."""

import unohelper

from wandcount import functions, pane_job

g_ImplementationHelper = unohelper.ImplementationHelper()

for room in (functions, pane_job):
    for implementation, name, services in room.IMPLEMENTATIONS:
        g_ImplementationHelper.addImplementation(implementation, name, services)

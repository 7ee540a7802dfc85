"""What LibreOffice loads: the list of this extension's UNO implementations."""

import unohelper

from wandcount import functions, menu, pane_job
from wandcount.document import stored_formulas
from wandcount.panel import panel

g_ImplementationHelper = unohelper.ImplementationHelper()

for room in (functions, menu, pane_job, panel, stored_formulas):
    for implementation, name, services in room.IMPLEMENTATIONS:
        g_ImplementationHelper.addImplementation(implementation, name, services)

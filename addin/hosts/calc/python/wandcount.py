"""What LibreOffice loads: the list of this extension's UNO implementations."""

import unohelper

from wandcount import functions, menu
from wandcount.document import stored_formulas
from wandcount.office.context import keeps_context
from wandcount.panel import panel

g_ImplementationHelper = unohelper.ImplementationHelper()

for room in (functions, menu, panel, stored_formulas):
    for implementation, name, services in room.IMPLEMENTATIONS:
        g_ImplementationHelper.addImplementation(keeps_context(implementation), name, services)

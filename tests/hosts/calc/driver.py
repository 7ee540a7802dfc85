"""Drives a real LibreOffice for the tests: one JSON request a line in, one JSON answer a line out.

What a request does, it does on the office's main thread, as a user's own doing: a call that comes over the bridge
runs on a thread of its own, and GTK hangs for good where two threads run its loop.
"""

import json
import os
import signal
import sys
import threading
import time
import traceback

import uno
import unohelper
from com.sun.star.awt import XCallback
from com.sun.star.beans import NamedValue
from com.sun.star.task import XInteractionApprove, XInteractionHandler
from com.sun.star.ucb import XCommandEnvironment

import dressed
from driven import cell_at, cells_of, document, named, service, sheet_of, state
from screenReader import Panel


class Approving(unohelper.Base, XInteractionHandler):
    """Says yes to whatever is asked: to install an extension, to open for reading only what somebody else has open."""

    def handle(self, request):
        for continuation in request.getContinuations():
            if continuation.queryInterface(uno.getTypeByName(XInteractionApprove.__pyunointerface__)):
                continuation.select()
                return


class Environment(unohelper.Base, XCommandEnvironment):
    def getInteractionHandler(self):
        return Approving()

    def getProgressHandler(self):
        return None


class Turn(unohelper.Base, XCallback):
    """A request that is done when the office's main loop comes to it.

    The office waits in `notify`, and what is called from within runs on the thread that waits.
    """

    def __init__(self, request):
        self._request = request
        self._answered = threading.Event()
        self._answer = None

    def notify(self, data):
        self._answer = answered(self._request)
        self._answered.set()

    def answer(self):
        state["caller"].addCallback(self, None)
        # An office that is killed meanwhile never comes to it.
        while not self._answered.wait(1):
            state["context"].ServiceManager
        return self._answer


def connect(request):
    """Waits for the office to listen on its pipe, and to run its main loop."""
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
    until = time.monotonic() + request["seconds"]
    while True:
        try:
            state["context"] = resolver.resolve(
                f"uno:pipe,name={request['pipe']};urp;StarOffice.ComponentContext"
            )
            break
        except Exception:
            if time.monotonic() > until:
                raise
            time.sleep(0.1)
    state["desktop"] = service("com.sun.star.frame.Desktop")
    state["caller"] = service("com.sun.star.awt.AsyncCallback")
    Turn({"id": 0, "do": "idle"}).answer()


def idle(request):
    pass


def install(request):
    manager = state["context"].getValueByName("/singletons/com.sun.star.deployment.ExtensionManager")
    url = uno.systemPathToFileUrl(request["path"])
    return manager.addExtension(url, (), "user", None, Environment()).getIdentifier().Value


def open_document(request):
    url = uno.systemPathToFileUrl(request["path"]) if "path" in request else "private:factory/scalc"
    how = {"Hidden": request.get("hidden", False), "ReadOnly": request.get("readOnly", False)}
    if request.get("asked"):
        how["InteractionHandler"] = Approving()
    opened = state["desktop"].loadComponentFromURL(url, "_blank", 0, named(**how))
    key = opened.RuntimeUID
    state["documents"][key] = opened
    return key


def store(request):
    url = uno.systemPathToFileUrl(request["path"])
    document(request).storeToURL(url, named(FilterName=request["filter"]))


def close(request):
    state["documents"].pop(request["doc"]).close(True)


def close_all(request):
    for opened in state["documents"].values():
        opened.setModified(False)
        opened.close(True)
    state["documents"].clear()


def rename_first(request):
    document(request).Sheets.getByIndex(0).Name = request["to"]


def first_sheet(request):
    return document(request).Sheets.getByIndex(0).Name


def put(request):
    """Formulas in Calc's own English, or numbers and texts as a user types them."""
    cells_of(request).setFormulaArray(tuple(tuple(line) for line in request["formulas"]))


def type_in(request):
    """A number, a text, or a formula in Calc's own English."""
    cell_at(request).setFormula(str(request["typed"]))


def put_values(request):
    cells_of(request).setDataArray(tuple(tuple(line) for line in request["values"]))


class Later(unohelper.Base, XCallback):
    def __init__(self, action):
        self._action = action

    def notify(self, data):
        self._action()


def put_values_behind(request):
    """Holds the main thread while a process goes on, then puts values when all is done that came meanwhile, before what
    that sets off."""
    os.kill(request["goesOn"], signal.SIGCONT)
    time.sleep(request["seconds"])
    state["caller"].addCallback(Later(lambda: put_values(request)), None)


def merge(request):
    cells_of(request).merge(True)


def sheet_names(request):
    return document(request).Sheets.ElementNames


def active_sheet(request):
    return document(request).CurrentController.ActiveSheet.Name


def put_array(request):
    cells_of(request).setArrayFormula(request["formula"])


def cell_told(cell):
    code = cell.getError()
    return {
        "value": None if code else cell.getDataArray()[0][0],
        "error": code,
        "shows": cell.String,
        "formula": cell.Formula if cell.Formula.startswith(("=", "{")) else None,
    }


def cells(request):
    area = cells_of(request)
    address = area.RangeAddress
    return [
        [cell_told(area.getCellByPosition(c, r)) for c in range(address.EndColumn - address.StartColumn + 1)]
        for r in range(address.EndRow - address.StartRow + 1)
    ]


def values(request):
    return cells_of(request).getDataArray()


def timed(request):
    """Seconds from setting a cell until all the cells have their values."""
    source, watched = sheet_of(request).getCellRangeByName(request["set"]), cells_of(request)
    began = time.perf_counter()
    source.Value = request["to"]
    watched.getDataArray()
    return time.perf_counter() - began


def fill_down(request):
    area = cells_of(request)
    area.getCellByPosition(0, 0).Formula = request["formula"]
    area.fillAuto(uno.Enum("com.sun.star.sheet.FillDirection", "TO_BOTTOM"), 1)


def calculate(request):
    document(request).calculateAll()


def job(request):
    """What a script may ask of the pane."""
    answer = service("org.wandcount.tests.Pane").execute(
        (
            NamedValue("Document", request["doc"]),
            NamedValue("Request", json.dumps(request["request"])),
        )
    )
    return json.loads(answer)


def select(request):
    document(request).CurrentController.select(cells_of(request))


def selection(request):
    return document(request).CurrentSelection.AbsoluteName


def put_local(request):
    """A formula as the user types it, in his own language and with his own signs."""
    cells_of(request).FormulaLocal = request["formula"]


def dispatch(request):
    helper = service("com.sun.star.frame.DispatchHelper")
    helper.executeDispatch(document(request).CurrentController.Frame, request["command"], "", 0, ())


def panel(request):
    return Panel(document(request).CurrentController, request["deck"], request["panel"])


def read_aloud(request):
    return panel(request).told()


def focused(request):
    return panel(request).focused(request["near"])


def is_modified(request):
    return document(request).isModified()


def set_modified(request):
    document(request).setModified(request["to"])


def undo(request):
    """As a user does it, in the window of the document."""
    document(request).CurrentController.Frame.activate()
    document(request).getUndoManager().undo()


def undo_titles(request):
    return document(request).getUndoManager().getAllUndoActionTitles()


def undone(request):
    """Something that the user did and took back, and might do again."""
    cell = document(request).Sheets.getByIndex(0).getCellRangeByName("Z99")
    cell.String = "Typed"
    undo(request)


def redo_titles(request):
    return document(request).getUndoManager().getAllRedoActionTitles()


def protect(request):
    """A sheet, or the document's structure where none is named."""
    (sheet_of(request) if "sheet" in request else document(request)).protect("")


def unprotect(request):
    (sheet_of(request) if "sheet" in request else document(request)).unprotect("")


def rename_sheet(request):
    sheet_of(request).Name = request["to"]


def add_sheet(request):
    sheets = document(request).Sheets
    sheets.insertNewByName(request["sheet"], sheets.Count)


def move_sheet(request):
    document(request).Sheets.moveByName(request["sheet"], request["to"])


def copy_sheet(request):
    """Behind the last sheet of another document, as the office's own command to copy a sheet does it."""
    sheets = state["documents"][request["to"]].Sheets
    sheets.importSheet(document(request), request["sheet"], sheets.Count)


def insert_rows(request):
    sheet_of(request).Rows.insertByIndex(request["at"], request["count"])


def insert_columns(request):
    sheet_of(request).Columns.insertByIndex(request["at"], request["count"])


def row_heights(request):
    """Of a sheet's first rows as they are, and as the office would make them for what they show, 1/100 mm."""
    rows = [sheet_of(request).Rows.getByIndex(at) for at in range(request["rows"])]
    now = [row.Height for row in rows]
    for row in rows:
        row.OptimalHeight = True
    return [now, [row.Height for row in rows]]


def window_size(request):
    document(request).CurrentController.Frame.ContainerWindow.setPosSize(
        0, 0, request["width"], request["height"], 15
    )


def formula_cell(request):
    """The first cell of a sheet whose formula holds some words."""
    sheet = sheet_of(request)
    for part in sheet.queryContentCells(16):
        address = part.RangeAddress
        for r, line in enumerate(part.getFormulaArray()):
            for c, formula in enumerate(line):
                if request["holding"] in formula:
                    cell = sheet.getCellByPosition(address.StartColumn + c, address.StartRow + r)
                    return cell.AbsoluteName.split(".")[-1].replace("$", "")
    raise LookupError(request["holding"])


def described(request):
    """What the function wizard knows of a function."""
    descriptions = service("com.sun.star.sheet.FunctionDescriptions")
    told = {part.Name: part.Value for part in descriptions.getByName(request["name"])}
    return {
        "description": told["Description"],
        "arguments": [[a.Name, a.Description] for a in told["Arguments"]],
    }


def end(request):
    """Ends the office; nobody is there to say whether what was changed is to be kept."""
    for opened in state["documents"].values():
        opened.setModified(False)
    state["desktop"].terminate()


REQUESTS = {**vars(dressed), **globals()}

# These wait for the main thread themselves.
ON_THEIR_OWN_THREAD = ("connect", "install", "job")


def answered(request):
    try:
        return {"id": request["id"], "value": REQUESTS[request["do"]](request)}
    except Exception as error:
        return {"id": request["id"], "failed": f"{error}\n{traceback.format_exc()}"}


def answer_to(request):
    if request["do"] in ON_THEIR_OWN_THREAD:
        return answered(request)
    try:
        return Turn(request).answer()
    except Exception as error:
        return {"id": request["id"], "failed": f"The office is gone: {error}"}


for line in sys.stdin:
    print(json.dumps(answer_to(json.loads(line))), flush=True)

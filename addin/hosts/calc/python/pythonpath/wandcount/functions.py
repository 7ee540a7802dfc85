"""The worksheet functions: each call of a cell goes to the engine, and its answer becomes a cell value."""

import contextlib

import unohelper
from com.sun.star.lang import XServiceInfo
from com.sun.star.uno import RuntimeException

from .cell_arguments import number_of_code, on_the_wire
from .engine.answering_child import AnsweringChild
from .engine.engine import Engine
from .engine.engine_absent import EngineAbsent
from .office.log import log
from .office.main_thread import later
from .office.open_documents import open_spreadsheets
from .office.places import NAMES, packaged_json

try:
    from org.wandcount import XFeed

    _INTERFACES = (XServiceInfo, XFeed)
except ImportError:
    # While the extension is being registered its own type is not known yet.
    _INTERFACES = (XServiceInfo,)

_SERVICES = (NAMES["functions"], "com.sun.star.sheet.AddIn")

# What one recalculation waits at most, s.
_LIMIT = 2.0
_MOST_KNOWN = 50_000
# A longer range costs more to remember than to compute.
_LONGEST_REMEMBERED = 200

_NOT_AVAILABLE = 32_767
_WRONG = 519

_UNKNOWN = object()
_REFUSED = object()
_known = {}


def _recalculate():
    for document in open_spreadsheets():
        modified = document.isModified()
        document.calculateAll()
        document.setModified(modified)


_engine = Engine(AnsweringChild, on_back=lambda: later(_recalculate))


def calculate_again():
    """Asks the engine anew for every cell of every open document."""
    _known.clear()
    _engine.try_again()
    _recalculate()


def use_chosen_node():
    """Ends the engine; the next one runs with the program that the user chose."""
    _engine.renew()


def engine_absent():
    """Why the cells get no answer, or None: an engine that rested long enough is started for it."""
    with contextlib.suppress(EngineAbsent):
        _engine.start()
    return _engine.absent


def _cell(value):
    return value if isinstance(value, str) else float(value)


def _error(code, rows):
    """For an array function Calc takes one error only, as an exception: #VALUE!. Another is an array of one cell."""
    number = number_of_code(code)
    if not rows:
        return number
    return _REFUSED if code == _WRONG else ((number,),)


def _value(answer, rows):
    if "code" in answer:
        return _error(answer["code"], rows)
    if "rows" in answer:
        return tuple(tuple(_cell(cell) for cell in row) for row in answer["rows"])
    return _cell(answer["value"])


def _remembered(arguments):
    if tuple not in map(type, arguments):
        return True
    for argument in arguments:
        if isinstance(argument, tuple) and len(argument) * len(argument[0]) > _LONGEST_REMEMBERED:
            return False
    return True


def _call(name, rows, arguments):
    key = (name, arguments) if _remembered(arguments) else None
    value = _known.get(key, _UNKNOWN)
    if value is not _UNKNOWN:
        return value
    try:
        value = _value(_engine.ask({"call": name, "args": on_the_wire(arguments)}, _LIMIT), rows)
    except EngineAbsent:
        return _error(_NOT_AVAILABLE, rows)
    except Exception:
        log.exception("%s", name)
        return _error(_WRONG, rows)
    if key:
        if len(_known) >= _MOST_KNOWN:
            _known.clear()
        _known[key] = value
    return value


class Functions(unohelper.Base, *_INTERFACES):
    """One method a function, as the type description declares them."""

    def __init__(self, context):
        pass

    def getImplementationName(self):
        return NAMES["functions"]

    def supportsService(self, name):
        return name in _SERVICES

    def getSupportedServiceNames(self):
        return _SERVICES


def _method(name, rows):
    def method(self, *arguments):
        value = _call(name, rows, arguments)
        if value is _REFUSED:
            raise RuntimeException(name, self)
        return value

    return method


for _entry in packaged_json("functions.json"):
    setattr(Functions, _entry["method"], _method(_entry["name"], _entry["rows"]))

IMPLEMENTATIONS = ((Functions, NAMES["functions"], _SERVICES),)

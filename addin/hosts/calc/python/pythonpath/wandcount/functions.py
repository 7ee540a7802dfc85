"""The worksheet functions: each call of a cell goes to the engine, and its answer becomes a cell value."""

import array
import base64
import itertools
import struct
import sys

import unohelper
from com.sun.star.lang import XServiceInfo

from .engine import Engine, EngineAbsent
from .log import log
from .main_thread import later
from .open_documents import open_spreadsheets
from .places import NAMES, packaged_json

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
# Blank rows at the end of a range longer than this stay behind: a whole column has a million.
_LONG_RANGE = 1_000

_NOT_AVAILABLE = 32_767
_WRONG = 519

_known = {}


def _error(code):
    """Calc reads the number of an error from the low bits of a number that is none."""
    return struct.unpack("<d", struct.pack("<Q", 0x7FF8000000000000 | code))[0]


def _recalculate():
    for document in open_spreadsheets():
        modified = document.isModified()
        document.calculateAll()
        document.setModified(modified)


_engine = Engine(on_back=lambda: later(_recalculate))


def calculate_again():
    """Asks the engine anew for every cell of every open document."""
    _known.clear()
    _engine.try_again()
    _recalculate()


def engine_absent():
    """Why the cells get no answer, or None."""
    return _engine.absent


def _shortened(argument):
    if not isinstance(argument, tuple) or len(argument) <= _LONG_RANGE:
        return argument
    used = len(argument)
    blank = ("",) * len(argument[0])
    while used and argument[used - 1] == blank:
        used -= 1
    rows = argument[: max(used, 1)]
    packed = _packed(rows)
    if packed is not None:
        return {"numbers": packed, "width": len(rows[0]), "height": len(argument)}
    return {"rows": rows, "height": len(argument)}


def _packed(rows):
    """Rows of nothing but numbers as their bytes, which cost a tenth of what their digits do; None for others."""
    try:
        numbers = array.array("d", itertools.chain.from_iterable(rows))
    except TypeError:
        return None
    if sys.byteorder == "big":
        numbers.byteswap()
    return base64.b64encode(numbers).decode("ascii")


def _cell(value):
    return value if isinstance(value, str) else float(value)


def _value(answer, rows):
    if "code" in answer:
        value = _error(answer["code"])
    elif "rows" in answer:
        return tuple(tuple(_cell(cell) for cell in row) for row in answer["rows"])
    else:
        value = _cell(answer["value"])
    return ((value,),) if rows else value


def _remembered(arguments):
    return all(not isinstance(a, tuple) or len(a) * len(a[0]) <= _LONGEST_REMEMBERED for a in arguments)


def _call(name, rows, arguments):
    key = (name, arguments) if _remembered(arguments) else None
    if key in _known:
        return _known[key]
    message = {"call": name, "args": [_shortened(a) for a in arguments]}
    try:
        value = _value(_engine.ask(message, _LIMIT), rows)
    except EngineAbsent:
        value = _error(_NOT_AVAILABLE)
        return ((value,),) if rows else value
    except Exception:
        log.exception("%s", name)
        value = _error(_WRONG)
        return ((value,),) if rows else value
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
    return lambda self, *arguments: _call(name, rows, arguments)


for _entry in packaged_json("functions.json"):
    setattr(Functions, _entry["method"], _method(_entry["name"], _entry["rows"]))

IMPLEMENTATIONS = ((Functions, NAMES["functions"], _SERVICES),)

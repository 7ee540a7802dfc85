"""The arguments of a cell's call as the engine takes them."""

import array
import base64
import itertools
import struct
import sys

# A range of more rows goes as bytes, and its blank rows at the end stay behind: a whole column has a million.
_LONG_RANGE = 500
_CHUNK = 4_096

# Among numbers as bytes, a cell that holds none; Calc's own errors have greater codes.
_NO_NUMBER = 1


def number_of_code(code):
    """Calc reads the number of an error from the low bits of a number that is none."""
    return struct.unpack("<d", struct.pack("<Q", 0x7FF8000000000000 | code))[0]


def code_of_number(number):
    return struct.unpack("<Q", struct.pack("<d", number))[0] & 0xFFFF


_NONE = number_of_code(_NO_NUMBER)


def _used(rows):
    """How many rows there are up to the last that holds anything."""
    blank = ("",) * len(rows[0])
    blanks = (blank,) * _CHUNK
    used = len(rows)
    while used > _CHUNK and rows[used - _CHUNK : used] == blanks:
        used -= _CHUNK
    while used and rows[used - 1] == blank:
        used -= 1
    return used


def _packed(rows):
    """Numbers as their bytes cost a tenth of what their digits do; texts go beside them, blank cells nowhere."""
    cells = list(itertools.chain.from_iterable(rows))
    texts = []
    try:
        numbers = array.array("d", cells)
    except TypeError:
        numbers = array.array("d", [cell if isinstance(cell, float) else _NONE for cell in cells])
        texts = [[at, cell] for at, cell in enumerate(cells) if cell and isinstance(cell, str)]
    if sys.byteorder == "big":
        numbers.byteswap()
    return {"numbers": base64.b64encode(numbers).decode("ascii"), "texts": texts}


def _cell(value):
    """An error of Calc's comes as a number that is none."""
    return {"code": code_of_number(value)} if value != value else value


def _argument(argument):
    if not isinstance(argument, tuple):
        return _cell(argument)
    if len(argument) > _LONG_RANGE:
        packed = _packed(argument[: max(_used(argument), 1)])
        return {**packed, "width": len(argument[0]), "height": len(argument)}
    return [[_cell(cell) for cell in row] for row in argument]


def on_the_wire(arguments):
    return [_argument(argument) for argument in arguments]

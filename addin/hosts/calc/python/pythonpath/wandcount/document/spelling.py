"""The names of our functions as other programs write them into files."""

import re

from ..office.places import NAMES, packaged_json

_NAMESPACE = NAMES["functions"]
_FUNCTION = "|".join(entry["name"] for entry in packaged_json("functions.json"))

# Spellings that Calc does not take for ours: under a mark, or with a line in the place of the point.
_MARKED = rf"(?:(?:_xlfn\.|_xlws\.)?_xldudf_|_xlfn\.|_xlws\.){_NAMESPACE}[._]"
OTHER = rf"(?:{_MARKED}|{_NAMESPACE}_)({_FUNCTION})\s*\("

# What stands in quotes is somebody's text or a sheet's name.
_QUOTED = re.compile(r"""("(?:[^"]|"")*"|'(?:[^']|'')*')""")
_OTHER = re.compile(rf"(?<![\w.]){OTHER}", re.IGNORECASE)


def _renamed(part):
    return _OTHER.sub(lambda m: f"{_NAMESPACE}.{m.group(1).upper()}(", part)


def recognised(formula):
    """The formula with our functions under the names that Calc knows them by."""
    if not _OTHER.search(formula):
        return formula
    parts = _QUOTED.split(formula)
    return "".join(part if index % 2 else _renamed(part) for index, part in enumerate(parts))

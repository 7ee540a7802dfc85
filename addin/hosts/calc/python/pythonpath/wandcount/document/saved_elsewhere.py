"""What stands in the file of a document that was saved by another program, or by this one when it could not compute."""

import re
import zipfile
from collections import namedtuple

import uno

from ..office.places import NAMES
from .spelling import OTHER

_WORKBOOK = re.compile(r"content\.xml|xl/workbook\.xml|xl/worksheets/[^/]+\.xml")
_MANIFEST = "META-INF/manifest.xml"
_OTHER = re.compile(OTHER.encode(), re.IGNORECASE)

# An office without this extension writes the names of functions that it does not know in small letters. In an .xlsx
# it keeps last values, also of formulas that made something else of the error they saw, such as IFERROR. Seen in 7.4.
_UNKNOWN = re.compile(rf"\b{NAMES['functions'].lower()}\.[a-z]+\(".encode())

# So it is with formulas that saw what a cell shows while the engine is missing.
_OURS = re.compile(rf"\b{NAMES['functions']}\.[A-Z]+\(".encode())
_NOT_AVAILABLE = re.compile(rb'<c [^>]*\bt="e"[^>]*><f\b[^>]*(?:/>|>[^<]*</f>)<v>#N/A</v>')

Signs = namedtuple("Signs", ("other_names", "old_values"))
_NOT_READ = Signs(other_names=True, old_values=False)


def _signs(texts):
    sheets = [text for name, text in texts.items() if name.startswith("xl/")]
    unanswered = any(map(_OURS.search, sheets)) and any(map(_NOT_AVAILABLE.search, sheets))
    return Signs(
        other_names=any(map(_OTHER.search, texts.values())),
        old_values=unanswered or any(map(_UNKNOWN.search, sheets)),
    )


def signs_in(url):
    """Whether names of ours may stand in a file in another spelling, and values of an .xlsx file may be old."""
    if not url.startswith("file:"):
        return _NOT_READ
    try:
        with zipfile.ZipFile(uno.fileUrlToSystemPath(url)) as file:
            names = file.namelist()
            texts = {name: file.read(name) for name in names if _WORKBOOK.fullmatch(name)}
            if not texts or (_MANIFEST in names and b"encryption-data" in file.read(_MANIFEST)):
                return _NOT_READ
            return _signs(texts)
    except (OSError, RuntimeError, zipfile.BadZipFile):
        # No zip, or one under a password.
        return _NOT_READ

"""Where things are: in the installed package, and in the user's profile."""

import functools
import json
import os

import uno

from .context import office_context

PACKAGE = os.path.abspath(os.path.join(os.path.dirname(__file__), "..", "..", ".."))


def packaged(*parts):
    """The path of a file of the package."""
    return os.path.join(PACKAGE, *parts)


def packaged_json(name):
    """What a JSON file of the package holds."""
    with open(packaged(name), encoding="utf-8") as file:
        return json.load(file)


@functools.lru_cache(maxsize=None)
def _profile():
    context = office_context()
    substitution = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.util.PathSubstitution", context
    )
    return uno.fileUrlToSystemPath(substitution.substituteVariables("$(user)", True))


def in_profile(name):
    """The path of a file of ours in the user's profile."""
    return os.path.join(_profile(), name)


NAMES = packaged_json("names.json")
WORDS = packaged_json("words.json")

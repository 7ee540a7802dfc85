"""Where things are: in the installed package, and in the user's profile."""

import json
import os

import uno

PACKAGE = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))


def packaged(*parts):
    """The path of a file of the package."""
    return os.path.join(PACKAGE, *parts)


def packaged_json(name):
    """What a JSON file of the package holds."""
    with open(packaged(name), encoding="utf-8") as file:
        return json.load(file)


def in_profile(name):
    """The path of a file of ours in the user's profile."""
    context = uno.getComponentContext()
    substitution = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.util.PathSubstitution", context
    )
    folder = uno.fileUrlToSystemPath(substitution.substituteVariables("$(user)", True))
    return os.path.join(folder, name)


NAMES = packaged_json("names.json")
WORDS = packaged_json("words.json")

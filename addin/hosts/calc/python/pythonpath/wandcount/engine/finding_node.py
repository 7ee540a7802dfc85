"""Finds the node program: the user's choice, the one in the package, on PATH, in the usual places."""

import glob
import json
import os
import shutil
import sys

from ..office.log import log
from ..office.places import in_profile, packaged

_WINDOWS = sys.platform == "win32"
_PROGRAM = "node.exe" if _WINDOWS else "node"

# Whoever looks after the computer may say which program it is; then only the user's choice goes before it.
_POINTER = "WANDCOUNT_NODE"

_USUAL = {
    "win32": (
        r"%ProgramFiles%\nodejs\node.exe",
        r"%ProgramFiles(x86)%\nodejs\node.exe",
        r"%LOCALAPPDATA%\Programs\nodejs\node.exe",
        r"%NVM_SYMLINK%\node.exe",
        r"%LOCALAPPDATA%\Volta\bin\node.exe",
        r"%APPDATA%\fnm\node-versions\*\installation\node.exe",
        r"%USERPROFILE%\scoop\apps\nodejs*\current\node.exe",
    ),
    "darwin": (
        "/opt/homebrew/bin/node",
        "/opt/homebrew/opt/node@*/bin/node",
        "/usr/local/bin/node",
        "/usr/local/opt/node@*/bin/node",
        "/opt/local/bin/node",
    ),
    "linux": (
        "/usr/local/bin/node",
        "/usr/bin/node",
        "/usr/bin/nodejs",
        "/snap/bin/node",
        "/opt/node*/bin/node",
        "/usr/local/lib/nodejs/*/bin/node",
    ),
}

# Where version managers keep them, on macOS and Linux.
_MANAGED = (
    "~/.volta/bin/node",
    "~/.local/bin/node",
    "~/.nvm/versions/node/*/bin/node",
    "~/.local/share/fnm/node-versions/*/installation/bin/node",
    "~/Library/Application Support/fnm/node-versions/*/installation/bin/node",
    "~/.asdf/installs/nodejs/*/bin/node",
    "~/.local/share/mise/installs/node/*/bin/node",
    "~/n/bin/node",
)


def _settings_path():
    return in_profile("wandcount.json")


# A choice that cannot be written down holds until the office ends.
_unkept = None


def chosen_node():
    """The program that the user pointed at, or None."""
    if _unkept:
        return _unkept
    try:
        with open(_settings_path(), encoding="utf-8") as file:
            node = json.load(file)["node"]
    except FileNotFoundError:
        return None
    except (OSError, ValueError, KeyError, TypeError) as error:
        log.error("%s is passed over: %r", _settings_path(), error)
        return None
    return node if isinstance(node, str) else None


def choose_node(path):
    """Keeps the user's choice."""
    global _unkept
    try:
        with open(_settings_path(), "w", encoding="utf-8") as file:
            json.dump({"node": path}, file)
        _unkept = None
    except OSError as error:
        log.error("the choice of %s is not kept: %s", path, error)
        _unkept = path


def _newest_first(pattern):
    def version(path):
        digits = "".join(c if c.isdigit() else " " for c in path).split()
        return [int(d) for d in digits]

    return sorted(glob.glob(os.path.expanduser(os.path.expandvars(pattern))), key=version, reverse=True)


def is_program(path):
    """True where the computer lets the user start it."""
    return os.path.isfile(path) and os.access(path, os.X_OK)


def _carried():
    """The program that some packages bring. Unpacking them does not keep it runnable."""
    path = packaged("engine", _PROGRAM)
    if os.path.isfile(path) and not os.access(path, os.X_OK):
        try:
            os.chmod(path, 0o755)
        except OSError as error:
            log.error("%s", error)
    return path


def _usual():
    yield _carried()
    for folder in os.environ.get("PATH", os.defpath).split(os.pathsep):
        yield shutil.which("node", path=folder)
    platform = "linux" if sys.platform.startswith("linux") else sys.platform
    for pattern in _USUAL.get(platform, ()) + (() if _WINDOWS else _MANAGED):
        yield from _newest_first(pattern)


def candidates():
    """Paths of programs to try, one after another; what somebody pointed at also where it may not run."""
    chosen, pointed = chosen_node(), os.environ.get(_POINTER)
    if chosen:
        yield chosen
    if pointed:
        yield pointed
        return
    given = {None, chosen}
    for path in _usual():
        if path not in given and is_program(path):
            given.add(path)
            yield path

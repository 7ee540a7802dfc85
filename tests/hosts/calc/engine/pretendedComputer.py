"""Looks for Node as the component does, on a computer that is told of: JSON in, the path of the first program out.

The modules and the search are the real ones; the system's name, its environment and its files are as told.
"""

import json
import logging
import ntpath
import os
import stat
import sys
import types

# Loaded while the computer is still the real one.
import glob  # noqa: F401
import shutil

# There is no profile to keep a log in.
logging.disable()
told = json.load(sys.stdin)
windows = told["platform"] == "win32"

sys.path.insert(0, told["component"])
places = types.ModuleType("wandcount.office.places")
places.packaged = lambda *parts: os.path.join(told["package"], *parts)
places.in_profile = lambda name: os.path.join(told["profile"], name)
sys.platform = told["platform"]
sys.modules["wandcount.office.places"] = places
from wandcount.engine.finding_node import candidates, is_program  # noqa: E402

if windows:
    os.path, os.sep, os.pathsep = ntpath, "\\", ";"
    # Newer ones ask the system whether programs are also looked for in the folder that is open.
    shutil._winapi = types.SimpleNamespace(NeedCurrentDirectoryForExePath=lambda program: False)
os.environ = dict(told["environment"])

files, folders = {}, {}
for path, runnable in told["files"].items():
    files[os.path.normcase(path)] = runnable
    parent, name = os.path.split(path)
    while name:
        folders.setdefault(os.path.normcase(parent), {})[name] = None
        parent, name = os.path.split(parent)


class Entry:
    def __init__(self, folder, name):
        self.name = name
        self._path = os.path.normcase(os.path.join(folder, name))

    def is_dir(self):
        return self._path in folders


class Listing(list):
    def __enter__(self):
        return self

    def __exit__(self, *how):
        pass


def looked_at(path, **how):
    place = os.path.normcase(path)
    if place in files:
        return os.stat_result((stat.S_IFREG | 0o644, *[0] * 9))
    if place in folders:
        return os.stat_result((stat.S_IFDIR | 0o755, *[0] * 9))
    raise FileNotFoundError(path)


def listing(path):
    looked_at(path)
    return Listing(Entry(path, name) for name in folders[os.path.normcase(path)])


os.stat = os.lstat = looked_at
os.scandir = listing
os.access = lambda path, mode, **how: files.get(os.path.normcase(path), False) or os.path.normcase(path) in folders



def refused(path, mode, **how):
    raise PermissionError(path)


os.chmod = refused

print(json.dumps(next(filter(is_program, candidates()), None)))

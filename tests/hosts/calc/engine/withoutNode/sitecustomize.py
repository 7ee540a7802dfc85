"""A computer without Node: Python reads this as it starts where PYTHONPATH names its folder."""

import os

_NODES = ("node", "nodejs", "node.exe")
_access = os.access


def _access_without_node(path, mode, **how):
    return os.path.basename(os.fsdecode(path)) not in _NODES and _access(path, mode, **how)


os.access = _access_without_node

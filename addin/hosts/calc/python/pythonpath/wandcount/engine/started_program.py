"""Starts a program that is spoken with over pipes, and ends it."""

import contextlib
import os
import signal
import subprocess
import sys

_WINDOWS = sys.platform == "win32"


def _environment():
    # The office's own libraries and options are not meant for other programs.
    return {k: v for k, v in os.environ.items() if k not in ("LD_LIBRARY_PATH", "NODE_OPTIONS")}


def start_program(words):
    """A program with pipes to its stdin, stdout and stderr, and no window of its own; OSError where it cannot run."""
    how = {"creationflags": subprocess.CREATE_NO_WINDOW} if _WINDOWS else {"start_new_session": True}
    return subprocess.Popen(
        words,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=_environment(),
        **how,
    )


def end_program(program):
    """Ends it at once. Where it is a script that started Node, only the end of both closes the pipes."""
    if program.poll() is not None:
        return
    if _WINDOWS:
        program.kill()
    else:
        # macOS refuses it for one that has just ended.
        with contextlib.suppress(ProcessLookupError, PermissionError):
            os.killpg(program.pid, signal.SIGKILL)

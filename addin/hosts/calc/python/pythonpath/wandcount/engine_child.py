"""One running engine: lines in, lines out."""

import json
import os
import queue
import subprocess
import sys
import threading

from .log import log
from .places import packaged

class Ended(Exception):
    """The engine is gone."""


class Silent(Exception):
    """The engine did not answer in time."""


def _environment():
    # The office's own libraries and options are not meant for other programs.
    return {k: v for k, v in os.environ.items() if k not in ("LD_LIBRARY_PATH", "NODE_OPTIONS")}


def start_program(words):
    """A program with pipes to its stdin, stdout and stderr, and no window of its own."""
    flags = subprocess.CREATE_NO_WINDOW if sys.platform == "win32" else 0
    return subprocess.Popen(
        words,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=_environment(),
        creationflags=flags,
    )


class EngineChild:
    """Reads answers on a thread of its own, so that nobody who waits can be held longer than his limit."""

    def __init__(self, node, on_message, on_end):
        self.ready = threading.Event()
        self.gone = threading.Event()
        self._on_message = on_message
        self._on_end = on_end
        self.killed = False
        self._waiting = {}
        self._next = 0
        self._writing = threading.Lock()
        self._process = start_program([node, packaged("engine.cjs")])
        log.info("engine %d started with %s", self._process.pid, node)
        threading.Thread(target=self._read, daemon=True).start()
        threading.Thread(target=self._read_errors, daemon=True).start()

    @property
    def running(self):
        return self._process.poll() is None

    @property
    def status(self):
        return self._process.poll()

    def ask(self, message, seconds):
        """The answer to a message; Ended or Silent where there is none."""
        answers = queue.SimpleQueue()
        number = self.send(message, answers.put)
        try:
            answer = answers.get(timeout=seconds)
        except queue.Empty:
            raise Silent() from None
        finally:
            self._waiting.pop(number, None)
        if answer is None:
            raise Ended()
        return answer

    def send(self, message, heard):
        """Sends a message; `heard` is called once on another thread, with the answer or, where the engine ended, None."""
        with self._writing:
            self._next += 1
            number = self._next
            self._waiting[number] = heard
        try:
            self.tell({"id": number, **message})
        except Ended:
            self._waiting.pop(number, None)
            raise
        return number

    def tell(self, message):
        """Sends a message that nobody waits for an answer to."""
        line = json.dumps(message, separators=(",", ":"), allow_nan=False).encode("ascii") + b"\n"
        try:
            with self._writing:
                self._process.stdin.write(line)
                self._process.stdin.flush()
        except (OSError, ValueError):
            raise Ended() from None

    def kill(self):
        self.killed = True
        self._process.kill()

    def _read(self):
        for line in self._process.stdout:
            try:
                message = json.loads(line)
            except ValueError:
                log.error("engine %d said what is no message: %r", self._process.pid, line[:200])
                break
            if "ready" in message:
                log.info("engine %d ready, node %s", self._process.pid, message["ready"])
                self.ready.set()
            heard = self._waiting.pop(message.get("id"), None)
            if heard:
                heard(message)
            else:
                self._on_message(self, message)
        self._process.kill()
        log.info("engine %d ended with %s", self._process.pid, self._process.wait())
        # Whoever waits may ask at once why: the reason is there by then.
        self._on_end(self)
        self.gone.set()
        while self._waiting:
            self._waiting.popitem()[1](None)

    def _read_errors(self):
        for line in self._process.stderr:
            log.warning("engine %d: %s", self._process.pid, line.decode("utf-8", "replace").rstrip())

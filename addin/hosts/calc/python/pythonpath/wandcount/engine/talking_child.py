"""The engine of the panes, which also speaks without being asked."""

import queue
import threading

from .engine_child import Ended, EngineChild


class TalkingChild(EngineChild):
    """Its own threads hear it and write to it, so that nobody is held by what it does.

    A list is more than a pipe holds: writing it would take until the engine reads.
    """

    def __init__(self, *told):
        self._waiting = {}
        self._last = 0
        self._handing = threading.Lock()
        # Lines on their way to the engine, which wait until it is ready; None after the last one.
        self._lines = queue.SimpleQueue()
        super().__init__(*told)

    def tell(self, message):
        """Hands over a message that nobody waits for an answer to. Who hears the engine also hears of its end."""
        line = self.line_of(message)
        with self._handing:
            if self.gone.is_set():
                raise Ended()
            self._lines.put(line)

    def send(self, message, heard):
        """Hands over a message; `heard` is called once on another thread, with the answer or, where the engine ended, None."""
        with self._handing:
            if self.gone.is_set():
                raise Ended()
            self._last += 1
            line = self.line_of({"id": self._last, **message})
            self._waiting[self._last] = heard
            self._lines.put(line)

    def _write(self):
        while line := self._lines.get():
            try:
                self.write(line)
            except Ended:
                return

    def _listen(self):
        threading.Thread(target=self._write, daemon=True).start()
        while message := self._next_message():
            heard = self._waiting.pop(message.get("id"), None)
            if heard:
                heard(message)
            else:
                self._on_message(self, message)

    def _closed(self):
        self._lines.put(None)
        with self._handing:
            left = list(self._waiting.values())
            self._waiting.clear()
        for heard in left:
            heard(None)

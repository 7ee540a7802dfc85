"""The engine of the cells, which answers one question after another."""

import threading
import time

from .engine_child import Ended, EngineChild, NotReady, Silent

# How often somebody looks whether an answer is overdue, s.
_LOOKS = 0.05


class AnsweringChild(EngineChild):
    """Who asks reads the answer himself: handing it over from another thread costs more than all the rest of a call.

    That he is not held longer than his limit is the work of a thread that ends an engine whose answer is overdue.
    """

    def __init__(self, *told):
        self._asking = threading.Lock()
        # Set when it is ready, or has ended before.
        self._heard = threading.Event()
        self._asked = threading.Event()
        self._until = None
        self._last = 0
        super().__init__(*told)
        threading.Thread(target=self._watch, daemon=True).start()

    def ask(self, message, seconds):
        """The answer to a message; Ended, NotReady or Silent where there is none."""
        until = time.monotonic() + seconds
        if not self._heard.wait(seconds):
            raise NotReady()
        if not self.ready.is_set():
            raise Ended()
        with self._asking:
            self._last += 1
            self._until = until
            if not self._asked.is_set():
                self._asked.set()
            try:
                return self._answer({"id": self._last, **message})
            except Ended:
                if time.monotonic() < until:
                    raise
                raise Silent() from None
            finally:
                self._until = None

    def _answer(self, message):
        self.write(self.line_of(message))
        while answer := self._next_message():
            if answer.get("id") == message["id"]:
                return answer
        self._end()
        raise Ended()

    def _listen(self):
        self._heard.set()
        self._process.wait()

    def _closed(self):
        self._heard.set()
        self._asked.set()

    def _watch(self):
        while not self.gone.is_set():
            self._asked.wait()
            self._asked.clear()
            while (until := self._until) is not None:
                if time.monotonic() > until:
                    self.kill()
                    break
                time.sleep(_LOOKS)

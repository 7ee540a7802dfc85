"""The engine of the panes, which also speaks without being asked."""

from .engine_child import Ended, EngineChild


class TalkingChild(EngineChild):
    """Its own thread hears it, so that nobody is held by what it does."""

    def __init__(self, node, on_message, on_end):
        self._waiting = {}
        self._last = 0
        super().__init__(node, on_message, on_end)

    def send(self, message, heard):
        """Sends a message; `heard` is called once on another thread, with the answer or, where the engine ended, None."""
        with self._writing:
            self._last += 1
            number = self._last
            self._waiting[number] = heard
        try:
            self.tell({"id": number, **message})
        except Ended:
            self._waiting.pop(number, None)
            raise

    def _listen(self):
        while message := self._next_message():
            heard = self._waiting.pop(message.get("id"), None)
            if heard:
                heard(message)
            elif "ready" in message:
                self._is_ready(message)
            else:
                self._on_message(self, message)

    def _closed(self):
        while self._waiting:
            self._waiting.popitem()[1](None)

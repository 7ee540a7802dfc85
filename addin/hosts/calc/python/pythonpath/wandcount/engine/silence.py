"""Watches an engine while somebody waits for it."""

import threading
import time

# An engine that says nothing for so long hangs, s.
_LONGEST = 20.0
_LOOKS = 0.5


class Silence:
    """`excused` is true while the engine has nothing to say; `too_long` is called, on another thread, once it hangs."""

    def __init__(self, excused, too_long):
        self._excused = excused
        self._too_long = too_long
        self._waiting = set()
        self._heard_at = time.monotonic()
        self._watching = threading.Lock()

    def heard(self):
        """The engine said something."""
        self._heard_at = time.monotonic()

    def expect(self, waiter):
        """Somebody waits, until they no longer do."""
        self._waiting.add(waiter)

    def no_longer(self, waiter):
        self._waiting.discard(waiter)

    def watch(self):
        """One watch at a time, for as long as somebody waits."""
        if not self._watching.acquire(blocking=False):
            return
        self.heard()
        threading.Thread(target=self._follow, daemon=True).start()

    def _follow(self):
        try:
            while self._waiting:
                time.sleep(_LOOKS)
                if self._excused():
                    self.heard()
                elif time.monotonic() - self._heard_at > _LONGEST:
                    self._too_long()
                    break
        finally:
            self._watching.release()
        # Somebody may have begun to wait between the last look and the release.
        if self._waiting:
            self.watch()

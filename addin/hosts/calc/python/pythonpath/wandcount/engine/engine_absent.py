"""Why no engine answers, and the words for it."""

from ..office.places import NAMES, WORDS


class EngineAbsent(Exception):
    """Nobody answers; `reason` is a key of the words under "absent", `path` and `version` tell of the node program."""

    def __init__(self, reason, path="", version=""):
        super().__init__(reason)
        self.reason = reason
        self.path = path
        self.version = version

    @property
    def words(self):
        """What the user is told."""
        return self._filled(WORDS["absent"][self.reason])

    def words_of_choice(self, used):
        """What the user is told of a program of his choice where another one, `used`, runs the engine."""
        instead = WORDS["chosen"]["instead"].format(path=used.path, version=used.version)
        return f"{self._filled(WORDS['chosen'][self.reason])} {instead}"

    def _filled(self, words):
        return words.format(path=self.path, version=self.version, least=NAMES["leastNode"])

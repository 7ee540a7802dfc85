"""What the panel shows where no engine answers, and the log: drawn like any view, with buttons of the component's own."""

from .log import log_path
from .places import WORDS

# As much of the log as is read at one sitting.
_LINES = 60


def _text(key, tone, words):
    return {"kind": "text", "key": key, "indent": 0, "tone": tone, "text": words}


def _buttons(*actions):
    return {
        "kind": "buttons",
        "key": "component buttons",
        "indent": 0,
        "buttons": [
            {
                "key": action,
                "label": WORDS["buttons"][action],
                "event": {"kind": "component", "action": action},
                "primary": index == 0,
            }
            for index, action in enumerate(actions)
        ],
    }


def absent_view(absent):
    """Why nobody answers, and what to do."""
    words = WORDS["absent"][absent.reason].replace("{detail}", absent.detail)
    return {
        "section": "absent",
        "pieces": [
            _text("title", "title", WORDS["name"]),
            _text("why", "warning", words),
            _buttons("tryAgain", "chooseNode", "showLog"),
        ],
    }


def log_view():
    """The log's last lines."""
    try:
        with open(log_path(), encoding="utf-8") as file:
            lines = file.readlines()[-_LINES:]
    except FileNotFoundError:
        lines = []
    return {
        "section": "log file",
        "pieces": [
            _text("title", "title", WORDS["log"]["title"]),
            _text("where", "quiet", log_path()),
            _buttons("back", "openLog"),
            *(_text(f"line {n}", "plain", line.rstrip()) for n, line in enumerate(lines)),
        ],
    }


def restarted_view(view):
    """A view after the engine was started again, with what that means for what was typed."""
    return {**view, "pieces": [_text("restarted", "warning", WORDS["restarted"]), *view["pieces"]]}

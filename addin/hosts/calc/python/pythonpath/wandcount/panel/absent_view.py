"""What the panel shows where no engine answers, and the log: drawn like any view, with buttons of the component's own."""

from ..office.log import log_path
from ..office.places import WORDS

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
    return {
        "section": "absent",
        "pieces": [
            _text("title", "title", WORDS["name"]),
            _text("why", "warning", absent.words),
            _buttons("tryAgain", "chooseNode", "showLog"),
        ],
    }


def log_view():
    """The log's last lines."""
    try:
        with open(log_path(), encoding="utf-8") as file:
            lines = file.readlines()[-_LINES:]
    except OSError:
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


def told_above(view, restarted, passed_over):
    """A view with what is told above it: of an engine that was started again, of a node program passed over."""
    above = []
    if restarted:
        above.append(_text("restarted", "warning", WORDS["restarted"]))
    if passed_over:
        above += [_text("passed over", "warning", passed_over), _buttons("chooseNode")]
    return {**view, "pieces": [*above, *view["pieces"]]} if above else view

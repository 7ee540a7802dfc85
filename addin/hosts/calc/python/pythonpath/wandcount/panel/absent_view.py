"""What the panel shows where no engine answers, and the log: drawn like any view, with buttons of the component's own."""

from ..office.log import log_path
from ..office.places import WORDS
from ..wire import Button, ButtonsPiece, TextPiece, View

# As much of the log as is read at one sitting.
_LINES = 60


def _text(key, tone, words):
    return TextPiece(key=key, indent=0, tone=tone, text=words)


def _buttons(*actions):
    buttons = [
        Button(
            key=action,
            label=WORDS["buttons"][action],
            event={"kind": "component", "action": action},
            primary=index == 0,
        )
        for index, action in enumerate(actions)
    ]
    return ButtonsPiece(key="component buttons", indent=0, buttons=buttons)


def absent_view(absent):
    """Why nobody answers, and what to do."""
    title, why = _text("title", "title", WORDS["name"]), _text("why", "warning", absent.words)
    return View("absent", [title, why, _buttons("tryAgain", "chooseNode", "showLog")])


def log_view():
    """The log's last lines."""
    try:
        with open(log_path(), encoding="utf-8") as file:
            lines = file.readlines()[-_LINES:]
    except OSError:
        lines = []
    pieces = [
        _text("title", "title", WORDS["log"]["title"]),
        _text("where", "quiet", log_path()),
        _buttons("back", "openLog"),
        *(_text(f"line {n}", "plain", line.rstrip()) for n, line in enumerate(lines)),
    ]
    return View("log file", pieces)


def told_above(view, restarted, passed_over):
    """A view with what is told above it: of an engine that was started again, of a node program passed over."""
    above = []
    if restarted:
        above.append(_text("restarted", "warning", WORDS["restarted"]))
    if passed_over:
        above += [_text("passed over", "warning", passed_over), _buttons("chooseNode")]
    return view._replace(pieces=[*above, *view.pieces]) if above else view

"""What the office tells screen readers of the sidebar, from top to bottom. On the main thread."""

import uno


def _constant(group, name):
    return uno.getConstantByName(f"com.sun.star.accessibility.{group}.{name}")


_FOCUSED = _constant("AccessibleStateType", "FOCUSED")
_CHECKED = _constant("AccessibleStateType", "CHECKED")
_KINDS = {
    _constant("AccessibleRole", role): kind
    for role, kind in {
        "LABEL": "text",
        "PUSH_BUTTON": "button",
        "TEXT": "field",
        "COMBO_BOX": "list",
        "CHECK_BOX": "tick box",
        "ICON": "picture",
        "PROGRESS_BAR": "progress",
        "SCROLL_BAR": "scroll bar",
        "SEPARATOR": "line",
    }.items()
}


def _value(kind, context):
    if kind == "tick box":
        return "yes" if context.getAccessibleStateSet().contains(_CHECKED) else ""
    if kind == "list":
        # The first child shows what is chosen.
        return context.getAccessibleChild(0).getAccessibleContext().getText()
    return context.getText() if kind == "field" else None


def _told(context):
    kind = _KINDS.get(context.getAccessibleRole(), f"role {context.getAccessibleRole()}")
    return {
        "kind": kind,
        "name": context.getAccessibleName(),
        "value": _value(kind, context),
    }


class Panel:
    def __init__(self, controller, deck, panel):
        # A deck that nobody holds takes its panels along.
        self._deck = controller.getSidebar().getDecks().getByName(deck)
        self._context = self._deck.getPanels().getByName(panel).getDialog().getAccessibleContext()
        self._count = self._context.getAccessibleChildCount()

    def _child(self, at):
        return self._context.getAccessibleChild(at).getAccessibleContext()

    def told(self):
        return [_told(self._child(at)) for at in range(self._count)]

    def focused(self, near):
        """The control that the keyboard is on, and its place; those near a place are looked at first."""
        for at in sorted(range(self._count), key=lambda at: abs(at - near)):
            child = self._child(at)
            if child.getAccessibleStateSet().contains(_FOCUSED):
                return {"at": at, **_told(child)}
        return None

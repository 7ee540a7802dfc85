"""The office's context, as the office hands it to what it makes of ours.

Not `uno.getComponentContext()`: where the office has loaded Python to install an extension, that is the context of the
installing, and using it until the office's end crashes the office.
"""

_given = None


def keeps_context(implementation):
    """The implementation, which keeps the context that it is made with."""

    def make(context, *arguments):
        global _given
        _given = context
        return implementation(context, *arguments)

    return make


def office_context():
    return _given

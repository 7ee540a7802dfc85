"""What is not done though nothing is wrong with the component."""


class Refused(Exception):
    """The engine has the sentence for the reason."""

    def __init__(self, reason):
        super().__init__(reason)
        self.reason = reason

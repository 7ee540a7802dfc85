"""Rows as the answer of a function that is declared to give any value.

Python cannot return such a value: its tuples arrive in Calc as a kind of array that Calc takes for a wrong value. A
function that is declared to give an array, however, gives an error only as one cell of it, and an INDEX of any other
cell is Err:502. Calc also takes a value that is told to a listener, and that may be an array. Seen in 7.4.
"""

import uno
import unohelper
from com.sun.star.sheet import ResultEvent, XVolatileResult


class ArrayResult(unohelper.Base, XVolatileResult):
    """Told to each listener at once, and never again."""

    def __init__(self, rows):
        self._rows = rows

    def addResultListener(self, listener):
        event = ResultEvent()
        event.Source = self
        event.Value = uno.Any("[][]any", self._rows)
        listener.modified(event)

    def removeResultListener(self, listener):
        pass

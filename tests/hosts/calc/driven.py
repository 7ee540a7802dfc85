"""The office that is driven, and where in its documents a request is about."""

import uno

state = {"documents": {}}


def service(name):
    return state["context"].ServiceManager.createInstanceWithContext(name, state["context"])


def named(**values):
    return tuple(
        uno.createUnoStruct("com.sun.star.beans.PropertyValue", Name=name, Value=value)
        for name, value in values.items()
    )


def document(request):
    return state["documents"][request["doc"]]


def sheet_of(request):
    return document(request).Sheets.getByName(request["sheet"])


def cells_of(request):
    return sheet_of(request).getCellRangeByName(request["cells"])


def cell_at(request):
    return sheet_of(request).getCellByPosition(request["column"], request["row"])

"""How wide a column is that holds so many characters of the document's ordinary font."""

import uno

from ..office.context import office_context

# A letter is measured large, so that whole pixels are precise enough.
_MEASURED = 100
_POINT = 2540 / 72

# The room beside the text of a cell, hundredths of a millimetre.
_BESIDE = 130


def digit_width(document):
    """Width of a digit, hundredths of a millimetre."""
    style = document.StyleFamilies.getByName("CellStyles").getByName("Default")
    context = office_context()
    toolkit = context.ServiceManager.createInstanceWithContext("com.sun.star.awt.Toolkit", context)
    font = uno.createUnoStruct("com.sun.star.awt.FontDescriptor")
    font.Name = style.CharFontName
    font.Height = _MEASURED
    measured = toolkit.createScreenCompatibleDevice(1, 1).getFont(font).getCharWidth("0")
    return measured / _MEASURED * style.CharHeight * _POINT


def column_width(document, characters):
    """Hundredths of a millimetre."""
    return round(characters * digit_width(document) + _BESIDE)

"""Colours of words by their tone, on a light and on a dark ground. Each tone has a sign or a weight of its own besides.

The light grounds go down to the grey of a plain X11 window, on which the colours of the pages would be too pale.
"""

_SHADES = {
    "quiet": (0x4F4954, 0xADA5B4),
    "warning": (0x733F00, 0xF0B765),
    "error": (0x733F00, 0xF0B765),
    "title": (0x6A3470, 0xD5A6DC),
}


def is_dark(colour):
    """True where light words are read better on the ground."""
    red, green, blue = colour >> 16 & 255, colour >> 8 & 255, colour & 255
    return red * 299 + green * 587 + blue * 114 < 128_000


def shade(tone, dark):
    """The colour of a tone, or None for the office's own."""
    return _SHADES[tone][1 if dark else 0] if tone in _SHADES else None

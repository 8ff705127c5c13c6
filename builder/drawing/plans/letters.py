"""How wide lettering is: the widths of the theme's reading face, so that words can be set without a browser."""

from __future__ import annotations

import unicodedata

from journeybook.drawing.lettering import SIZES

_WIDTHS = {
    0.24: "ijl|'`,.:;!",
    0.32: 'fr t()[]{}"',
    0.37: "-_/\\°²³",
    0.48: "ckvxysz*",
    0.53: "aeuJ1×<>?",
    0.57: "bdghnopqEFLPTYZ23457~µ",
    0.62: "0689ABCKRSVX&+=$÷",
    0.70: "DGHNOQU#w",
    0.84: "mMW@%",
}
"""Width in ems of what stands in the regular face; measured of the face that the theme brings."""
_WIDTH_OF = {letter: width for width, letters in _WIDTHS.items() for letter in letters}
_OTHER, _FULL = 0.62, 1.0
_STRONG = 1.07
_SPARE = 1.03
"""For a device that shows another face."""


def width_of(words: str, look: str) -> float:
    """About how wide a line of lettering is, in units of the drawing; ``look`` is its class."""
    ems = sum(_letter(letter) for letter in words)
    strong = _STRONG if look in ("label-strong", "number") else 1.0
    return ems * strong * _SPARE * SIZES[look]


def _letter(letter: str) -> float:
    known = _WIDTH_OF.get(letter)
    if known is not None:
        return known
    # An accent does not widen a letter; letters of East Asia fill their square.
    plain = unicodedata.normalize("NFD", letter)[0]
    return _WIDTH_OF.get(plain, _FULL if unicodedata.east_asian_width(plain) in "WF" else _OTHER)


def wrapped(words: str, width: float, look: str) -> list[str]:
    """The words in as few lines of that width as they need, of about one length; a wider word stands alone.

    Not broken at spaces that hold a number and its unit together.
    """
    pieces = [piece for piece in words.replace("\n", " ").split(" ") if piece]
    lines = _filled(pieces, width, look)
    if len(lines) < 2:
        return lines
    low, high = max(width_of(line, look) for line in lines) / 2, width
    for _ in range(6):
        middle = (low + high) / 2
        tried = _filled(pieces, middle, look)
        if len(tried) == len(lines) and all(width_of(line, look) <= width for line in tried):
            lines, high = tried, middle
        else:
            low = middle
    return lines


def _filled(pieces: list[str], width: float, look: str) -> list[str]:
    lines: list[str] = []
    for piece in pieces:
        if lines and width_of(f"{lines[-1]} {piece}", look) <= width:
            lines[-1] += f" {piece}"
        else:
            lines.append(piece)
    return lines

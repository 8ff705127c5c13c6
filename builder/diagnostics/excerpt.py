"""A line of an author's file with a marker under it that stands where the eye expects it.

What a terminal shows is wider or narrower than the characters counted: a wide character takes two cells
(Unicode Standard Annex 11), a combining one none, a tab as many as it likes, a control character whatever it
does. So each character is turned into what is shown for it and how many cells that takes, and the marker
counts cells.
"""

from __future__ import annotations

import unicodedata

_JOINERS = "\u200c\u200d"
"""Part of correct spelling in several scripts, hence not made visible."""

_CUT = "…"


def visible(text: str) -> str:
    """The text with tabs and control characters made visible."""
    return "".join(_shown(character)[0] for character in text)


def excerpt(line: str, column: int, length: int, width: int) -> tuple[str, str]:
    """The line and the marker below it, each at most ``width`` cells wide.

    ``column`` counts from 1, in characters, as ``length`` does. A longer line is cut on either side around
    the marker; ``…`` stands for what was cut. The marker may stand just past the end of the line.
    """
    cells = [_shown(character) for character in line]
    first = min(column - 1, len(cells))
    last = min(first + max(1, length), len(cells))
    begin, end = _window([size for _, size in cells], first, last, width)
    before = _CUT if begin > 0 else ""
    after = _CUT if end < len(cells) else ""
    shown = before + "".join(text for text, _ in cells[begin:end]) + after
    offset = len(before) + sum(size for _, size in cells[begin:first])
    marked = sum(size for _, size in cells[first : min(last, end)])
    room = max(1, width - offset)
    return shown.rstrip(), " " * offset + "^" * max(1, min(marked, room))


def _shown(character: str) -> tuple[str, int]:
    """What is shown for a character, and how many cells it takes."""
    if " " <= character <= "~":
        return character, 1
    if character == "\t":
        return "→", 1
    if character in _JOINERS:
        return character, 0
    kind = unicodedata.category(character)
    if kind == "Cc" and character < "\x20":
        return chr(0x2400 + ord(character)), 1
    if kind in ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"):
        name = f"<U+{ord(character):04X}>"
        return name, len(name)
    if kind in ("Mn", "Me"):
        return character, 0
    return character, 2 if unicodedata.east_asian_width(character) in ("W", "F") else 1


def _window(sizes: list[int], first: int, last: int, width: int) -> tuple[int, int]:
    """Which characters to show: those from ``first`` on, up to ``last`` where there is room."""
    if sum(sizes) <= width:
        return 0, len(sizes)
    room = width - 2  # a cut on either side
    begin = end = first
    used = 0
    while end < last and used + sizes[end] <= room * 2 // 3:
        used += sizes[end]
        end += 1
    ahead = used + (room - used) * 2 // 3
    while begin > 0 and used + sizes[begin - 1] <= ahead:
        begin -= 1
        used += sizes[begin]
    while end < len(sizes) and used + sizes[end] <= room:
        used += sizes[end]
        end += 1
    while begin > 0 and used + sizes[begin - 1] <= room:
        begin -= 1
        used += sizes[begin]
    return begin, end

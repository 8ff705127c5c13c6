"""In which type a job card fills one page of paper, reckoned from its words.

No browser measures a card before it is printed, and with scripts off none ever does. So the height is reckoned: the
shorter paper (Letter) and the narrower one (A4), letters half as wide as they are high, a little more than that in
bold; the reserve is for words that are wider. A test prints every card of the demo course and counts its pages.
"""

from __future__ import annotations

from math import ceil
from typing import NamedTuple

from journeybook.content.model import CardBlock, CardBlockKind, CardTable, Course, JobCard
from journeybook.content.wording import Wording

SIZES = (18.0, 17.0, 16.0, 15.0, 14.2, 13.4, 12.6, 11.9, 11.2, 10.6, 10.0, 9.5, 9.0)
"""Points of the text, from the largest; ``job-card.css`` has a class for each and the other measures used here."""
WIDTH, HEIGHT = 498.0, 714.0
"""Points inside the card's edge: 210 mm and 279 mm less margins, edge and padding."""
LONG_LABEL = 30
"""A longer label of a blank has a line for itself; the template asks the same."""
_RESERVE = 0.97
_LETTER = 0.52
_NARROW = 0.42
_LINE = 1.3
_SMALL = 8.6
"""Points of cautions and sources, whatever the size of the rest."""
_PADDING = 9.8
"""Points above and below a block together."""
_FIGURE = 190.0
"""Points that a drawing is given at most."""
_TAG = 84.0
"""Points that the hole and the heavy edge of a tag take."""


class Size(NamedTuple):
    """A step of ``SIZES``, counted from 1, and whether the card fits in it."""

    step: int
    fits: bool


def size_of(card: JobCard, course: Course, wording: Wording) -> Size:
    """The largest type in which the card fits, or the smallest with ``fits`` False."""
    for step, points in enumerate(SIZES, start=1):
        if _height(card, course, wording, points) <= HEIGHT * _RESERVE:
            return Size(step, True)
    return Size(len(SIZES), False)


def _height(card: JobCard, course: Course, wording: Wording, points: float) -> float:
    large = (3.2 if card.tag else 2.1) * points
    head = _lines(wording.plain(card.title), large * _NARROW / _LETTER, WIDTH) * large * 1.12
    head += _text(wording.plain(card.when), points, WIDTH) + 0.3 * points + _PADDING
    body = sum(_block(block, wording, points) for block in card.body)
    names = [course.sources[name].title for name in card.sources if name in course.sources]
    foot = _text(" · ".join(names) + len(names) * " (not yet confirmed), clause", _SMALL, WIDTH)
    foot += sum(_text(wording.plain(caution), _SMALL, WIDTH - 12) for caution in course.cautions)
    foot += 2 * _SMALL * _LINE + _PADDING + 6
    if card.keep:
        foot += _text(wording.plain(card.keep) + " Kept", points, WIDTH) + _PADDING
    example = 24 if course.kit.is_example else 0
    return example + head + body + foot + (_TAG if card.tag else 0)


def _lines(text: str, points: float, width: float) -> int:
    """How many lines a text takes: each paragraph at least one."""
    letters = width / (points * _LETTER)
    return sum(max(1, ceil(len(line) / letters)) for line in (text or " ").split("\n"))


def _text(text: str, points: float, width: float) -> float:
    return _lines(text, points, width) * points * _LINE


def _block(block: CardBlock, wording: Wording, points: float) -> float:
    match block.kind:
        case CardBlockKind.STEPS:
            width = WIDTH - 3.2 * points
            texts = sum(_text(wording.plain(step), points, width) for step in block.lines)
            return texts + len(block.lines) * (0.64 * points + 0.6)
        case CardBlockKind.BLANKS:
            long = sum(len(label) > LONG_LABEL for label in block.lines)
            return (long + ceil((len(block.lines) - long + min(long, 1)) / 2)) * 2.4 * points + _PADDING
        case CardBlockKind.FIGURE:
            return _FIGURE + _PADDING
        case CardBlockKind.TABLE if block.table is not None:
            return _table(block.table, wording, points) + _PADDING
        case CardBlockKind.WARNING | CardBlockKind.STOP:
            size = 1.08 * points if block.kind is CardBlockKind.STOP else points
            return _text(wording.plain(block.text), size, WIDTH - 3 * size) + size + _PADDING + 3
        case _:
            return _text(wording.plain(block.text), points, WIDTH) + _PADDING


def _table(table: CardTable, wording: Wording, points: float) -> float:
    rows = [
        [wording.plain(cell) for cell in row] or [""] * len(table.columns)
        for row in (table.columns, *table.rows)
    ]
    # A browser gives each column about the share that its longest cell asks for.
    least = 20 if len(rows[0]) == 3 else 8
    longest = [
        max(8 if all(row[at] for row in rows) else least, *(len(row[at]) for row in rows))
        for at in range(len(table.columns))
    ]
    height = 0.0
    for row in rows:
        texts = [
            _text(cell, points, WIDTH * share / sum(longest) - points) + 0.52 * points + 1
            for cell, share in zip(row, longest, strict=True)
            if cell
        ]
        height += max(texts, default=0) if all(row) else max([2 * points, *texts])
    return height

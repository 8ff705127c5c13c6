"""Where the name of a part may stand: near it, struck through by nothing, off the row where the row is crowded."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from journeybook.drawing.exploded.boxes import LEVEL, UPRIGHT, Box, Label, Lying, depth_of
from journeybook.drawing.exploded.parts import Part, Side
from journeybook.drawing.plans.letters import width_of, wrapped
from journeybook.drawing.plans.sheet import LINE

LETTER = 20.0
"""Across the ring round a letter."""
GAP = 12.0
"""Between any two bodies that lie apart."""
_ROWS = (34.0, 54.0, 74.0)
"""How far off a name may stand from a part of a crowded row, with a line to it."""


@dataclass(frozen=True, kw_only=True)
class Crowd:
    """What is in the way of a part and its name."""

    bodies: Sequence[Box]
    ways: Sequence[Box]
    """Lines along which other parts come; a name must not be struck through."""
    sides: frozenset[Side]
    """Sides from which something goes on the part."""
    base: Box


def is_free(label: Label, others: Sequence[Box]) -> bool:
    """Whether a label keeps off everything else."""
    return not any(
        label.box.meets(other, GAP / 2) or (label.leader is not None and label.leader.meets(other, 3.0))
        for other in others
    )


def labels(part: Part, box: Box, named: str, used: frozenset[Side]) -> Iterator[Label]:
    """Where the label of a part may stand, the best first; beside a line that leads on, above it or below it."""
    level = part.axis == "level"
    lines = tuple(wrapped(part.name, 90.0 if level else 128.0, named)) if named else ()
    wide = LETTER + (5 + max(width_of(line, named) for line in lines) if lines else 0)
    high = max(LETTER, LINE * len(lines))
    left, top = (box.left + box.right - wide) / 2, (box.top + box.foot - high) / 2
    below, above = (left, box.foot + 5), (left, box.top - 5 - high)
    aside = (6 + high) / 2
    right = [(box.right + 6, top)]
    if "right" in used:
        right = [(box.right + 6, top + aside + 3), (box.right + 6, top - aside - 3)]
    far = [(box.left - 6 - wide, top)]
    if "left" in used:
        far = [(box.left - 6 - wide, top + aside + 3), (box.left - 6 - wide, top - aside - 3)]
    stood: list[tuple[float, float, Box | None]] = [(x, y, None) for x, y in (below, above)]
    if level and lines:
        middle = (box.left + box.right) / 2
        for off in _ROWS:
            stood.append((left, box.foot + off, Box(middle, box.foot, middle, box.foot + off - 2)))
            stood.append((left, box.top - off - high, Box(middle, box.top - off + 2, middle, box.top)))
    beside = [(x, y, None) for x, y in (*right, *far)]
    for x, y, leader in [*stood, *beside] if level else [*beside, *stood]:
        yield Label(box=Box(x, y, x + wide, y + high), lines=lines, look=named or "label", leader=leader)


def label_beside(base: Lying, crowd: Crowd) -> Label | None:
    """The base's name beside it, where nothing lies or will lie; None where there is no such place."""
    lines = tuple(wrapped(base.part.name, 110.0, "label-strong"))
    wide, high = max(width_of(line, "label-strong") for line in lines), LINE * len(lines)
    box = base.box
    top = (box.top + box.foot - high) / 2
    for off in (0.0, -0.3, 0.3):
        y = top + off * (box.foot - box.top)
        for x in (box.right + 8, box.left - 8 - wide):
            at = Box(x, y, x + wide, y + high)
            if not any(at.meets(other, 3.0) for other in (*crowd.bodies, *crowd.ways)):
                return Label(box=at, lines=lines, look="label-strong")
    return None


def label_within(part: Part, scale: float) -> Label | None:
    """The base's name on the base, where there is room."""
    wide, high = part.wide * scale, part.high * scale
    if part.shape != "box":
        return None
    lines = tuple(wrapped(part.name, wide - 10, "label-strong"))
    if max(width_of(line, "label-strong") for line in lines) > wide - 12 or LINE * len(lines) > high - 8:
        return None
    shift_x, shift_y = -depth_of(part) * scale * LEVEL / 2, depth_of(part) * scale * UPRIGHT / 2
    half = LINE * len(lines) / 2
    return Label(box=Box(shift_x - wide / 2, shift_y - half, shift_x + wide / 2, shift_y + half), lines=lines)

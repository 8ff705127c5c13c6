"""Where everything lies: put together round the base, and drawn apart along the way each part goes on.

A part is moved out on its own side, past the one it goes on, until nothing lies under it or its name: neither what
lies apart already nor any place where another part may be before it is put on itself. So at no time, in whatever right
order, does a part that still lies there cover one that is in place. What can be put on early lies nearer.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from journeybook.drawing.exploded.parts import ROUND, Assembly, Part, Side
from journeybook.drawing.plans.letters import width_of, wrapped
from journeybook.drawing.plans.sheet import LINE, WIDTH

LEVEL, UPRIGHT = 0.26, 0.24
"""How wide a circle seen from the side is drawn, and how high one seen from above, to its diameter."""
LETTER = 20.0
"""Across the ring round a letter."""
_GAP = 12.0
_MARGIN = 4.0
_LARGEST, _SMALLEST = 2.2, 0.25
_TALL, _TALLEST = 430.0, 760.0
_LEAST_PART = 12.0
_WORTH = 0.6
"""How much smaller than without names the parts may be drawn for them."""
_STEP = 3.0
_FARTHEST = 1500.0
_ROWS = (34.0, 54.0, 74.0)
"""How far off a name may stand from a part of a crowded row, with a line to it."""
_OUT = {"above": (0, -1), "below": (0, 1), "left": (-1, 0), "right": (1, 0)}


@dataclass(frozen=True)
class Box:
    """An upright rectangle on the sheet."""

    left: float
    top: float
    right: float
    foot: float

    def moved(self, x: float, y: float) -> Box:
        """The same elsewhere."""
        return Box(self.left + x, self.top + y, self.right + x, self.foot + y)

    def meets(self, other: Box, gap: float = 0.0) -> bool:
        """Whether the two overlap or are closer than ``gap``."""
        return (
            self.left < other.right + gap
            and other.left < self.right + gap
            and self.top < other.foot + gap
            and other.top < self.foot + gap
        )


@dataclass(frozen=True, kw_only=True)
class Label:
    """A part's name beside it."""

    box: Box
    lines: tuple[str, ...]
    """None where the letter alone stands there."""
    look: str = "label"
    leader: Box | None = None
    """The line from the part to a name that stands off, as a box without breadth."""


@dataclass(frozen=True, kw_only=True)
class Lying:
    """One part: its middle when apart, its middle when in place, and how large it is."""

    part: Part
    x: float
    y: float
    home_x: float
    home_y: float
    scale: float
    label: Label | None

    @property
    def box(self) -> Box:
        """What it covers while it lies apart."""
        return body(self.part, self.scale).moved(self.x, self.y)

    @property
    def home(self) -> Box:
        """What it covers in place."""
        return body(self.part, self.scale).moved(self.home_x, self.home_y)


@dataclass(frozen=True, kw_only=True)
class Places:
    """All parts, each after the one it goes on; the base is the first."""

    lying: tuple[Lying, ...]
    foot: float
    """How far down the sheet they reach."""
    scale: float


def depth_of(part: Part) -> float:
    """From front to back, in the author's units."""
    return part.deep or min(part.wide, part.high, 40.0)


def body(part: Part, scale: float) -> Box:
    """What a part covers, measured from its middle."""
    wide, high = part.wide * scale / 2, part.high * scale / 2
    if part.shape in ROUND and part.axis == "level":
        wide += high * LEVEL
    elif part.shape in ROUND:
        high += wide * UPRIGHT
    elif part.shape in ("box", "plate"):
        wide += depth_of(part) * scale * LEVEL / 2
        high += depth_of(part) * scale * UPRIGHT / 2
    return Box(-wide, -high, wide, high)


@lru_cache(maxsize=64)
def places(assembly: Assembly) -> Places | None:
    """Everything as large as the sheet allows; None where even the smallest parts do not fit.

    Names stand beside the parts, unless the parts would have to be much smaller for it: then their letters alone.
    """
    bare = _largest(assembly, "")
    if bare is None:
        return None
    for named in ("label", "small"):
        found = _largest(assembly, named)
        if found is not None and found.scale >= _WORTH * bare.scale:
            return found
    return bare


def _largest(assembly: Assembly, named: str) -> Places | None:
    """The largest that fits; taller than is handy only where nothing else fits."""
    tall = None
    scale = _LARGEST
    while scale > _SMALLEST and _smallest(assembly, scale) >= _LEAST_PART:
        found = _laid_out(assembly, scale, named)
        if found is not None and found.foot <= _TALL:
            return found
        if tall is None and found is not None and found.foot <= _TALLEST:
            tall = found
        scale *= 0.93
    return tall


def _smallest(assembly: Assembly, scale: float) -> float:
    return min(max(part.wide, part.high) for part in assembly.parts) * scale


def _laid_out(assembly: Assembly, scale: float, named: str) -> Places | None:
    homes = _homes(assembly, scale)
    bodies = {id: body(part, scale).moved(x, y) for id, (part, x, y) in homes.items()}
    lying: dict[str, Lying] = {}
    taken: list[Box] = []
    ways: list[Box] = []
    for part in assembly.from_the_base:
        _, home_x, home_y = homes[part.id]
        if not part.joins:
            lying[part.id] = Lying(
                part=part,
                x=0,
                y=0,
                home_x=0,
                home_y=0,
                scale=scale,
                label=_label_within(part, scale),
            )
            continue
        base = lying[part.joins]
        later = {other.id for other in assembly.parts if part.id in other.waits}
        others = [box for id, box in bodies.items() if id != part.id and id not in later]
        start = (base.x + home_x - base.home_x, base.y + home_y - base.home_y)
        crowd = _Crowd(bodies=[*others, *taken], ways=ways, sides=_sides_used(assembly, part), base=base.box)
        found = _moved_out(part, start, scale, crowd, named)
        if found is None:
            return None
        x, y, label = found
        lying[part.id] = Lying(part=part, x=x, y=y, home_x=home_x, home_y=home_y, scale=scale, label=label)
        taken += [lying[part.id].box, label.box]
        if label.leader is not None:
            ways.append(label.leader)
        ways.append(way_between(part.side, base.box, lying[part.id].box, x, y))
    covered = [*bodies.values(), *taken]
    left, right = min(box.left for box in covered), max(box.right for box in covered)
    top, foot = min(box.top for box in covered), max(box.foot for box in covered)
    if right - left > WIDTH - 2 * _MARGIN:
        return None
    across, down = (WIDTH - left - right) / 2, _MARGIN - top
    return Places(
        lying=tuple(_shifted(one, across, down) for one in lying.values()),
        foot=foot + down + _MARGIN,
        scale=scale,
    )


def _shifted(one: Lying, x: float, y: float) -> Lying:
    label = one.label and replace(
        one.label,
        box=one.label.box.moved(x, y),
        leader=one.label.leader and one.label.leader.moved(x, y),
    )
    return Lying(
        part=one.part,
        x=one.x + x,
        y=one.y + y,
        home_x=one.home_x + x,
        home_y=one.home_y + y,
        scale=one.scale,
        label=label,
    )


def _homes(assembly: Assembly, scale: float) -> dict[str, tuple[Part, float, float]]:
    """Part and middle of each in place, round the middle of the base."""
    found: dict[str, tuple[Part, float, float]] = {}
    for part in assembly.from_the_base:
        if not part.joins:
            found[part.id] = (part, 0.0, 0.0)
            continue
        base, x, y = found[part.joins]
        out_x, out_y = _OUT[part.side]
        away_x = (base.wide + part.wide) / 2 - part.into
        away_y = (base.high + part.high) / 2 - part.into
        along_x, along_y = (part.shift, 0.0) if out_y else (0.0, part.shift)
        found[part.id] = (
            part,
            x + (out_x * away_x + along_x) * scale,
            y + (out_y * away_y + along_y) * scale,
        )
    return found


@dataclass(frozen=True, kw_only=True)
class _Crowd:
    """What is in the way of a part and its name."""

    bodies: Sequence[Box]
    ways: Sequence[Box]
    """Lines along which other parts come; a name must not be struck through."""
    sides: frozenset[Side]
    """Sides from which something goes on the part."""
    base: Box


def _sides_used(assembly: Assembly, part: Part) -> frozenset[Side]:
    return frozenset(other.side for other in assembly.parts if other.joins == part.id)


def way_between(side: Side, base: Box, own: Box, x: float, y: float) -> Box:
    """The line along which a part comes, as a box without breadth."""
    match side:
        case "right":
            return Box(base.right, y, own.left, y)
        case "left":
            return Box(own.right, y, base.left, y)
        case "above":
            return Box(x, own.foot, x, base.top)
        case "below":
            return Box(x, base.foot, x, own.top)


def _moved_out(
    part: Part, start: tuple[float, float], scale: float, crowd: _Crowd, named: str
) -> tuple[float, float, Label] | None:
    """The first place on the way out where part and label lie free."""
    out_x, out_y = _OUT[part.side]
    own = body(part, scale)
    distance = _GAP
    while distance < _FARTHEST:
        x, y = start[0] + out_x * distance, start[1] + out_y * distance
        if not any(own.moved(x, y).meets(other, _GAP) for other in crowd.bodies):
            box = own.moved(x, y)
            lines = [*crowd.ways, way_between(part.side, crowd.base, box, x, y)]
            for label in _labels(part, box, named, crowd.sides):
                if _is_free(label, [*crowd.bodies, *lines]):
                    return x, y, label
        distance += _STEP
    return None


def _is_free(label: Label, others: Sequence[Box]) -> bool:
    return not any(
        label.box.meets(other, _GAP / 2) or (label.leader is not None and label.leader.meets(other, 3.0))
        for other in others
    )


def _labels(part: Part, box: Box, named: str, used: frozenset[Side]) -> Iterator[Label]:
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


def _label_within(part: Part, scale: float) -> Label | None:
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

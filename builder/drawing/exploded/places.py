"""Where everything lies: put together round the base, and drawn apart along the way each part goes on.

A part is moved out on its own side, past the one it goes on, until nothing lies under it or its name: neither what
lies apart already nor any place where another part may be before it is put on itself. So at no time, in whatever right
order, does a part that still lies there cover one that is in place. What can be put on early lies nearer.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from journeybook.drawing.exploded.boxes import Box, Label, Lying, body
from journeybook.drawing.exploded.labels import GAP, Crowd, is_free, label_beside, label_within, labels
from journeybook.drawing.exploded.parts import Assembly, Part, Side
from journeybook.drawing.plans.sheet import WIDTH

_MARGIN = 4.0
_LARGEST, _SMALLEST = 2.2, 0.25
_TALL, _TALLEST = 430.0, 760.0
_LEAST_PART = 12.0
_WORTH = 0.6
"""How much smaller than without names the parts may be drawn for them."""
_STEP = 3.0
_FARTHEST = 1500.0
_OUT = {"above": (0, -1), "below": (0, 1), "left": (-1, 0), "right": (1, 0)}


@dataclass(frozen=True, kw_only=True)
class Places:
    """All parts, each after the one it goes on; the base is the first."""

    lying: tuple[Lying, ...]
    foot: float
    """How far down the sheet they reach."""
    scale: float


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
                label=label_within(part, scale),
            )
            continue
        base = lying[part.joins]
        later = {other.id for other in assembly.parts if part.id in other.waits}
        others = [box for id, box in bodies.items() if id != part.id and id not in later]
        start = (base.x + home_x - base.home_x, base.y + home_y - base.home_y)
        crowd = Crowd(bodies=[*others, *taken], ways=ways, sides=_sides_used(assembly, part), base=base.box)
        found = _moved_out(part, start, scale, crowd, named)
        if found is None:
            return None
        x, y, label = found
        lying[part.id] = Lying(part=part, x=x, y=y, home_x=home_x, home_y=home_y, scale=scale, label=label)
        taken += [lying[part.id].box, label.box]
        if label.leader is not None:
            ways.append(label.leader)
        ways.append(way_between(part.side, base.box, lying[part.id].box, x, y))
    base = lying[assembly.base.id]
    if base.label is None and named:
        crowd = Crowd(bodies=[*bodies.values(), *taken], ways=ways, sides=frozenset(), base=base.box)
        beside = label_beside(base, crowd)
        lying[base.part.id] = replace(base, label=beside)
        taken += [beside.box] if beside else []
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
    part: Part, start: tuple[float, float], scale: float, crowd: Crowd, named: str
) -> tuple[float, float, Label] | None:
    """The first place on the way out where part and label lie free."""
    out_x, out_y = _OUT[part.side]
    own = body(part, scale)
    distance = GAP
    while distance < _FARTHEST:
        x, y = start[0] + out_x * distance, start[1] + out_y * distance
        if not any(own.moved(x, y).meets(other, GAP) for other in crowd.bodies):
            box = own.moved(x, y)
            lines = [*crowd.ways, way_between(part.side, crowd.base, box, x, y)]
            for label in labels(part, box, named, crowd.sides):
                if is_free(label, [*crowd.bodies, *lines]):
                    return x, y, label
        distance += _STEP
    return None

"""Where letters stand beside the parts of a drawing: on the outline of the part or just outside a small one."""

from __future__ import annotations

import math
from collections.abc import Sequence

from journeybook.drawing.parts import Box, Drawn, Part
from journeybook.drawing.path_points import Point

_MOST = 48
"""How many points of an outline are tried."""
_OUT_OF_VIEW, _ON_A_MARK, _ON_LETTERING, _ON_A_PART, _ON_ITSELF, _ON_A_DETAIL = 50.0, 50.0, 8.0, 2.0, 1.5, 1.0
"""How much worse a place is for each unit of area that it covers of these."""
_SMALL = 16
"""A part is small where its box is less than so many squares of a mark's radius."""


def mark_places(parts: Sequence[Part], drawing: Drawn, radius: float) -> list[Point | None]:
    """For each part the middle of its mark, a disc of ``radius``; None where the part's place is not known."""
    placed: list[Box] = []
    found: list[Point | None] = []
    for part in parts:
        best = _best(part, drawing, placed, radius)
        found.append(best)
        if best is not None:
            placed.append(_disc(best, radius))
    return found


def _best(part: Part, drawing: Drawn, placed: Sequence[Box], radius: float) -> Point | None:
    own = part.box
    if own is None or not part.points:
        return None
    middle = own.centre
    reach = max(own.width, own.height, 1.0)
    others = [box for other in drawing.parts.values() if (box := other.box) and _apart(own, box)]
    details = [box for box, within in drawing.details if part.id not in within]
    small = part.filled and own.width * own.height < _SMALL * radius * radius

    def cost(point: Point) -> tuple[float, float, float]:
        disc = _disc(point, radius)
        area = disc.width * disc.height
        covers = _OUT_OF_VIEW * (area - disc.shared(drawing.view))
        covers += _ON_A_MARK * sum(disc.shared(other.grown(2)) for other in placed)
        covers += _ON_LETTERING * sum(disc.shared(text.grown(3)) for text in drawing.texts)
        covers += _ON_A_PART * sum(disc.shared(other) for other in others)
        covers += _ON_A_DETAIL * sum(disc.shared(detail) for detail in details)
        # A large part may be hollow, and a letter on it hides little; of a small one it would hide what is asked.
        covers += _ON_ITSELF * disc.shared(own) if small else 0.0
        # Of places that cover as little, the one farthest from the middle hides least of an area; dots and lines are
        # no area, and a letter among them says best which are meant.
        away = math.hypot(point[0] - middle[0], point[1] - middle[1]) / reach
        return (covers - area * (away if part.filled else -away), point[1], point[0])

    step = max(1, len(part.points) // _MOST)
    tried: list[Point] = list(part.points[::step])
    if small:
        tried += _sides(own.grown(radius * 0.7))
    if not part.filled:
        tried.append(middle)
    return min(tried, key=cost)


def _apart(own: Box, other: Box) -> bool:
    """Whether neither lies in the other: a part is no obstacle to what it holds, nor to what holds it."""
    least = min(own.width * own.height, other.width * other.height)
    return own.shared(other) < least - 0.5


def _sides(box: Box) -> tuple[Point, ...]:
    x, y = box.centre
    return ((box.left, y), (box.right, y), (x, box.top), (x, box.bottom))


def _disc(middle: Point, radius: float) -> Box:
    return Box(middle[0] - radius, middle[1] - radius, middle[0] + radius, middle[1] + radius)

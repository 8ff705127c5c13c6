"""Where the outline of a path passes: its ends, and points on the way round its curves.

Path data as in SVG 2, chapter 9.3; arcs by its appendix B.2.4, "Conversion from endpoint to center parameterization".
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from itertools import pairwise
from typing import TypeAlias

Point: TypeAlias = tuple[float, float]

_COMMAND = re.compile(r"([MmZzLlHhVvCcSsQqTtAa])([^MmZzLlHhVvCcSsQqTtAa]*)")
_NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")
_ARC = re.compile(
    r"({n})[\s,]*({n})[\s,]*({n})[\s,]*([01])[\s,]*([01])[\s,]*({n})[\s,]*({n})".replace(
        "{n}", _NUMBER.pattern
    )
)
"""The two flags of an arc may stand close to what follows: ``0 01.5.5``."""
_TAKES = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2}
_ON_THE_WAY = (0.25, 0.5, 0.75, 1.0)


def path_points(data: str) -> Iterator[Point]:
    """Yield points of the outline in the path's own units; an unreadable rest yields nothing."""
    here = start = control = (0.0, 0.0)
    before = ""
    for command, written in _COMMAND.findall(data):
        letter, relative = command.upper(), command.islower()
        if letter == "Z":
            here, before = start, "Z"
            continue
        for taken in _arguments(letter, written):
            from_x, from_y = here if relative else (0.0, 0.0)
            if letter == "H":
                here = (from_x + taken[0], here[1])
            elif letter == "V":
                here = (here[0], from_y + taken[0])
            elif letter in "MLT":
                end = (from_x + taken[0], from_y + taken[1])
                if letter == "T":
                    control = _mirrored(control, here) if before in ("Q", "T") else here
                    yield from _curve([here, control, end])
                here = end
                if letter == "M" and before != "m-again":
                    start = here
            elif letter == "A":
                end = (from_x + taken[5], from_y + taken[6])
                yield from _arc(here, taken, end)
                here = end
            else:
                given = [(from_x + taken[at], from_y + taken[at + 1]) for at in range(0, len(taken), 2)]
                if letter == "S":
                    given.insert(0, _mirrored(control, here) if before in ("C", "S") else here)
                yield from _curve([here, *given])
                control, here = given[-2], given[-1]
            yield here
            # What follows the first pair of an M is a line; it begins no new part of the path.
            before = "m-again" if letter == "M" else letter


def _arguments(letter: str, written: str) -> Iterator[list[float]]:
    if letter == "A":
        yield from ([float(number) for number in found] for found in _ARC.findall(written))
        return
    numbers = [float(number) for number in _NUMBER.findall(written)]
    takes = _TAKES[letter]
    for at in range(0, len(numbers) - takes + 1, takes):
        yield numbers[at : at + takes]


def _mirrored(point: Point, at: Point) -> Point:
    return (2 * at[0] - point[0], 2 * at[1] - point[1])


def _curve(points: list[Point]) -> Iterator[Point]:
    """A Bézier curve of any degree, by de Casteljau."""
    for share in _ON_THE_WAY:
        level = points
        while len(level) > 1:
            level = [(a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share) for a, b in pairwise(level)]
        yield level[0]


def _arc(start: Point, taken: list[float], end: Point) -> Iterator[Point]:
    rx, ry, turn = abs(taken[0]), abs(taken[1]), math.radians(taken[2])
    if not rx or not ry or start == end:
        return
    cos, sin = math.cos(turn), math.sin(turn)
    half_x, half_y = (start[0] - end[0]) / 2, (start[1] - end[1]) / 2
    x, y = cos * half_x + sin * half_y, -sin * half_x + cos * half_y
    stretch = max(1.0, math.sqrt((x / rx) ** 2 + (y / ry) ** 2))
    rx, ry = rx * stretch, ry * stretch
    square = (rx * y) ** 2 + (ry * x) ** 2
    root = math.sqrt(max(0.0, ((rx * ry) ** 2 - square) / square))
    side = root if taken[3] != taken[4] else -root
    middle_x, middle_y = side * rx * y / ry, -side * ry * x / rx
    first = math.atan2((y - middle_y) / ry, (x - middle_x) / rx)
    sweep = math.atan2((-y - middle_y) / ry, (-x - middle_x) / rx) - first
    if taken[4] and sweep < 0:
        sweep += 2 * math.pi
    elif not taken[4] and sweep > 0:
        sweep -= 2 * math.pi
    for step in range(1, 9):
        angle = first + sweep * step / 8
        along, across = middle_x + rx * math.cos(angle), middle_y + ry * math.sin(angle)
        yield (
            cos * along - sin * across + (start[0] + end[0]) / 2,
            sin * along + cos * across + (start[1] + end[1]) / 2,
        )

"""The parts of a drawing that have a name of their own, and about where they lie.

A question may ask for one of them. Boxes are close, not exact: curves are walked in a few steps, lettering is taken
for a little over half as wide as it is high, and what a clip cuts off counts as there.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from typing import NamedTuple, TypeAlias
from xml.parsers import expat

from journeybook.drawing.lettering import SIZES
from journeybook.drawing.path_points import Point, path_points

LEAST = 24
"""Pixels that a part has to be wide and high, so that a finger finds it (WCAG 2.2, 2.5.8)."""
SCREEN = 376
"""Pixels that the drawing of a question gets on a phone 390 wide."""

Matrix: TypeAlias = tuple[float, float, float, float, float, float]
"""a b c d e f, as ``matrix()`` has them."""

_UNSEEN = frozenset({"defs", "pattern", "marker", "clipPath", "title", "desc"})
_STROKES = {
    "ink": 2.0,
    "thin": 1.2,
    "bold": 3.2,
    "hidden-line": 1.2,
    "hatch": 1.0,
    "dots": 3.0,
    "dots-fine": 2.0,
    "act": 2.4,
    "hold": 2.4,
    "air": 2.6,
}
"""Class -> width of its line, as in ``css/figure.css``."""
_FILLS = re.compile(r"\b(?:fill|tint)-")
_LETTER = 0.53
"""How wide a letter is on average, in heights of the lettering."""
_DETAIL = 40.0
"""Units of the drawing: a shape less wide and high is a detail."""
_STILL: Matrix = (1, 0, 0, 1, 0, 0)
_TRANSFORM = re.compile(r"([a-zA-Z]+)\s*\(([^)]*)\)")
_NUMBERS = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")


class Box(NamedTuple):
    """A rectangle in units of the drawing."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From top to bottom."""
        return self.bottom - self.top

    @property
    def centre(self) -> Point:
        """Its middle."""
        return ((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    def grown(self, by: float) -> Box:
        """The same with a margin."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def shared(self, other: Box) -> float:
        """The area that lies in both."""
        wide = min(self.right, other.right) - max(self.left, other.left)
        high = min(self.bottom, other.bottom) - max(self.top, other.top)
        return wide * high if wide > 0 and high > 0 else 0.0


@dataclass(frozen=True, kw_only=True)
class Part:
    """An element of the drawing that has an id."""

    id: str
    """With the figure's id before it, as it stands on the page."""
    box: Box | None
    """None where it cannot be worked out."""
    points: tuple[Point, ...]
    """Some points of its outline."""
    filled: bool
    """Whether any of it is an area; else it is lines, dots or lettering."""


@dataclass(frozen=True, kw_only=True)
class Drawn:
    """What is known of one drawing."""

    view: Box
    parts: Mapping[str, Part]
    """By id with the figure's id before it."""
    texts: tuple[Box, ...]
    """Where its lettering stands."""
    details: tuple[tuple[Box, frozenset[str]], ...]
    """Where each shape stands that is no larger than a few letters, and the ids of the parts that it belongs to."""

    @property
    def pixel(self) -> float:
        """How many units of the drawing a pixel of a phone is."""
        return self.view.width / SCREEN


def full_id(part: str, figure_id: str) -> str:
    """The id of a part as it stands in a checked drawing, however its author wrote it."""
    return part if part.startswith(f"{figure_id}-") else f"{figure_id}-{part}"


def part_ids(svg: str, figure_id: str) -> list[str]:
    """The ids of the parts as an author would write them: without the figure's id, top to bottom."""
    return [name.removeprefix(f"{figure_id}-") for name in drawn(svg).parts]


def is_small(part: Part, drawing: Drawn) -> bool:
    """Whether a finger on a phone would miss it; False where that is not known."""
    return part.box is not None and min(part.box.width, part.box.height) < LEAST * drawing.pixel


@lru_cache(maxsize=256)
def drawn(svg: str) -> Drawn:
    """What is known of a checked drawing (``svg_check.check_svg``)."""
    reader = _Reader()
    parser = expat.ParserCreate("utf-8")
    parser.buffer_text = True
    parser.StartElementHandler = reader.start
    parser.EndElementHandler = reader.end
    parser.CharacterDataHandler = reader.characters
    parser.Parse(svg.encode("utf-8"), True)
    return Drawn(
        view=reader.view,
        parts={name: _part(name, found) for name, found in reader.found.items()},
        texts=tuple(reader.texts),
        details=tuple(reader.details),
    )


@dataclass(kw_only=True)
class _Found:
    """What has been read of one element with an id."""

    boxes: list[Box | None] = field(default_factory=list)
    points: list[Point] = field(default_factory=list)
    filled: bool = False


def _part(name: str, found: _Found) -> Part:
    known = [box for box in found.boxes if box is not None]
    return Part(
        id=name,
        box=_around(known) if known and len(known) == len(found.boxes) else None,
        points=tuple(found.points),
        filled=found.filled,
    )


def _around(boxes: Iterable[Box]) -> Box:
    left, top, right, bottom = zip(*boxes, strict=True)
    return Box(min(left), min(top), max(right), max(bottom))


@dataclass(kw_only=True)
class _Open:
    """An element that is open: its id, and how its units become those of the drawing (None where unknown)."""

    name: str
    id: str
    matrix: Matrix | None
    unseen: bool
    attributes: Mapping[str, str]
    text: str = ""


class _Reader:
    """Reads one drawing, element by element."""

    def __init__(self) -> None:
        self.view = Box(0, 0, 100, 100)
        self.found: dict[str, _Found] = {}
        self.texts: list[Box] = []
        self.details: list[tuple[Box, frozenset[str]]] = []
        self._open: list[_Open] = []

    def start(self, name: str, attributes: dict[str, str]) -> None:
        above = self._open[-1] if self._open else None
        if above is None:
            x, y, width, height = (float(one) for one in _NUMBERS.findall(attributes["viewBox"]))
            self.view = Box(x, y, x + width, y + height)
        unseen = name in _UNSEEN or (above is not None and above.unseen)
        matrix = above.matrix if above is not None else _STILL
        if "transform" in attributes and matrix is not None:
            own = _matrix(attributes["transform"])
            matrix = _times(matrix, own) if own is not None else None
        own_id = "" if unseen or above is None else attributes.get("id", "")
        if own_id:
            self.found[own_id] = _Found()
        self._open.append(_Open(name=name, id=own_id, matrix=matrix, unseen=unseen, attributes=attributes))

    def characters(self, text: str) -> None:
        if self._open:
            self._open[-1].text += text

    def end(self, _: str) -> None:
        element = self._open[-1]
        if not element.unseen:
            self._note(element)
        self._open.pop()

    def _note(self, element: _Open) -> None:
        """Put down what a shape or a text adds to every part that it belongs to."""
        if element.name in ("text", "tspan"):
            if not element.text.strip():
                return
            points = list(_lettering(element, self._open))
        elif element.name == "use":
            self._add(None, [], filled=False)  # What it draws may stand anywhere in the file.
            return
        else:
            points = list(_outline(element.name, element.attributes))
        if not points:
            return
        if element.matrix is None:
            self._add(None, [], filled=False)
            return
        placed = [_moved(point, element.matrix) for point in points]
        box = _around(Box(x, y, x, y) for x, y in placed)
        classes = element.attributes.get("class", "")
        if element.name in ("text", "tspan"):
            self.texts.append(box)
            filled = False
        else:
            box = box.grown(max((_STROKES.get(one, 0) for one in classes.split()), default=0) / 2)
            if classes and max(box.width, box.height) < _DETAIL:
                self.details.append((box, frozenset(one.id for one in self._open if one.id)))
            # A shape without any class is not seen, and is there to be touched.
            filled = not classes or bool(_FILLS.search(classes)) or "fill" in element.attributes
        self._add(box, placed, filled=filled)

    def _add(self, box: Box | None, points: list[Point], *, filled: bool) -> None:
        for element in self._open:
            if element.id:
                found = self.found[element.id]
                found.boxes.append(box)
                found.points.extend(points)
                found.filled = found.filled or filled


def _number(attributes: Mapping[str, str], key: str, default: float = 0.0) -> float:
    found = _NUMBERS.match(attributes.get(key, "").strip())
    return float(found[0]) if found else default


def _outline(name: str, attributes: Mapping[str, str]) -> Iterator[Point]:
    """Points of a shape's outline in its own units; none for an element that draws nothing itself."""
    if name == "path":
        yield from path_points(attributes.get("d", ""))
    elif name == "rect":
        x, y = _number(attributes, "x"), _number(attributes, "y")
        right, bottom = x + _number(attributes, "width"), y + _number(attributes, "height")
        middle_x, middle_y = (x + right) / 2, (y + bottom) / 2
        yield from ((x, y), (middle_x, y), (right, y), (right, middle_y))
        yield from ((right, bottom), (middle_x, bottom), (x, bottom), (x, middle_y))
    elif name in ("circle", "ellipse"):
        cx, cy = _number(attributes, "cx"), _number(attributes, "cy")
        radius = _number(attributes, "r")
        rx, ry = _number(attributes, "rx", radius), _number(attributes, "ry", radius)
        for step in range(8):
            angle = step * math.pi / 4
            yield (cx + rx * math.cos(angle), cy + ry * math.sin(angle))
    elif name == "line":
        for end in ("1", "2"):
            yield (_number(attributes, "x" + end), _number(attributes, "y" + end))
    elif name in ("polyline", "polygon"):
        numbers = [float(one) for one in _NUMBERS.findall(attributes.get("points", ""))]
        yield from zip(numbers[::2], numbers[1::2], strict=False)


def _lettering(element: _Open, above: list[_Open]) -> Iterator[Point]:
    """The corners of a line of lettering. A ``tspan`` has what it does not say from the text around it."""
    around = [one.attributes for one in above if one.name in ("text", "tspan")]
    merged: dict[str, str] = {}
    for attributes in around:
        merged.update(attributes)
    classes = " ".join(attributes.get("class", "") for attributes in around).split()
    size = next((SIZES[one] for one in reversed(classes) if one in SIZES), 15)
    wide = len(element.text.strip()) * size * _LETTER
    x, y = _number(merged, "x"), _number(merged, "y")
    anchor = merged.get("text-anchor", "")
    if "middle" in (*classes, anchor):
        x -= wide / 2
    elif "end" in (*classes, anchor):
        x -= wide
    yield from ((x, y - 0.75 * size), (x + wide, y + 0.25 * size))
    yield from ((x, y + 0.25 * size), (x + wide, y - 0.75 * size))


def _matrix(transform: str) -> Matrix | None:
    """A ``transform`` as one matrix (CSS Transforms 1, 12); None where it cannot be read."""
    whole = _STILL
    for name, written in _TRANSFORM.findall(transform):
        numbers = [float(one) for one in _NUMBERS.findall(written)]
        match name, numbers:
            case "matrix", [a, b, c, d, e, f]:
                whole = _times(whole, (a, b, c, d, e, f))
            case "translate", [x, *rest]:
                whole = _times(whole, (1, 0, 0, 1, x, rest[0] if rest else 0))
            case "scale", [x, *rest]:
                whole = _times(whole, (x, 0, 0, rest[0] if rest else x, 0, 0))
            case "rotate", [turn]:
                whole = _times(whole, _turned(turn))
            case "rotate", [turn, x, y]:
                whole = _times(whole, (1, 0, 0, 1, x, y))
                whole = _times(_times(whole, _turned(turn)), (1, 0, 0, 1, -x, -y))
            case "skewX", [turn]:
                whole = _times(whole, (1, 0, math.tan(math.radians(turn)), 1, 0, 0))
            case "skewY", [turn]:
                whole = _times(whole, (1, math.tan(math.radians(turn)), 0, 1, 0, 0))
            case _:
                return None
    return whole


def _turned(degrees: float) -> Matrix:
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return (cos, sin, -sin, cos, 0, 0)


def _times(first: Matrix, then: Matrix) -> Matrix:
    """The matrix of ``then`` inside of ``first``."""
    a, b, c, d, e, f = first
    p, q, r, s, t, u = then
    return (a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f)


def _moved(point: Point, matrix: Matrix) -> Point:
    a, b, c, d, e, f = matrix
    return (a * point[0] + c * point[1] + e, b * point[0] + d * point[1] + f)

"""Lines over a scale, with levels that matter."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from journeybook.drawing.plans.gauge import At
from journeybook.drawing.plans.letters import width_of, wrapped
from journeybook.drawing.plans.sheet import LINE, WIDTH, Drawn, Number, Sheet, plain, ticks

_LEFT, _RIGHT = 50.0, 386.0
_TOP, _HIGH = 34.0, 230.0
_MOST_MARKED = 12
_NAME_HIGH = 17.0
_STROKES = (("act", "fill-act"), ("ink", "fill-ink"), ("hold", "fill-hold"))
_MARKS = 3
"""Lines differ in their marks, too: full circles, squares, open circles."""

_Points = Sequence[tuple[float, float]]


@dataclass(frozen=True, kw_only=True)
class Scale:
    """One side of a chart."""

    label: str
    unit: str
    low: Number
    high: Number
    step: Number

    @property
    def name(self) -> str:
        """Label and unit."""
        return f"{self.label}, {self.unit}" if self.unit else self.label


@dataclass(frozen=True, kw_only=True)
class Line:
    """A line through points, from left to right."""

    name: str
    points: tuple[tuple[Number, Number], ...]


@dataclass(frozen=True, kw_only=True)
class Chart:
    """Lines over ``across``, their heights on ``up``; ``levels`` are heights with a name."""

    across: Scale
    up: Scale
    lines: tuple[Line, ...]
    levels: tuple[At, ...] = ()


@dataclass(frozen=True, kw_only=True)
class _Box:
    """Room for a name of one line."""

    left: float
    right: float
    top: float

    def touches(self, line: _Points) -> bool:
        """Whether a line through points comes into the box, or close to it."""
        for (x1, y1), (x2, y2) in pairwise(line):
            left, right = max(x1, self.left - 6), min(x2, self.right + 6)
            if left <= right:
                ends = [y1 + (y2 - y1) * (x - x1) / (x2 - x1) for x in (left, right)]
                if min(ends) < self.top + _NAME_HIGH + 3 and max(ends) > self.top - 3:
                    return True
        return False

    def is_apart(self, others: Sequence[_Box]) -> bool:
        """Whether no other name stands there."""
        return not any(
            self.left < other.right + 6
            and other.left < self.right + 6
            and abs(self.top - other.top) < _NAME_HIGH
            for other in others
        )


@dataclass(kw_only=True)
class _Room:
    """Where names of levels can stand between the lines."""

    head: float
    foot: float
    lines: Sequence[_Points]
    _taken: list[_Box] = field(default_factory=list)

    def take(self, y: float, wide: float) -> _Box:
        """Above the level or below it, as far to the right as no line runs through the name."""
        room = int(_RIGHT - 5 - wide - _LEFT - 6)
        boxes = [
            _Box(left=_RIGHT - 5 - wide - back, right=_RIGHT - 5 - back, top=top)
            for back in range(0, max(room, 0) + 1, 12)
            for top in (y - _NAME_HIGH - 3, y + 3)
            if top >= self.head and top + _NAME_HIGH <= self.foot
        ]
        free = (
            box
            for box in boxes
            if box.is_apart(self._taken) and not any(box.touches(line) for line in self.lines)
        )
        self._taken.append(next(free, boxes[0]))
        return self._taken[-1]


def draw_chart(chart: Chart) -> Drawn:
    """A grid to read off from, the lines over it, and below it which line is which."""
    sheet = Sheet()
    title = wrapped(chart.up.name, WIDTH - 8, "label-strong")
    head = _TOP + LINE * (len(title) - 1)
    foot = head + _HIGH

    def x_of(value: Number) -> float:
        share = (value - chart.across.low) / (chart.across.high - chart.across.low)
        return _LEFT + float(share) * (_RIGHT - _LEFT)

    def y_of(value: Number) -> float:
        return foot - float((value - chart.up.low) / (chart.up.high - chart.up.low)) * _HIGH

    sheet.text(4, 16, title, "label-strong")
    for value in ticks(chart.up.low, chart.up.high, chart.up.step):
        sheet.line([(_LEFT, y_of(value)), (_RIGHT, y_of(value))], "hatch")
        sheet.text(_LEFT - 7, y_of(value) + 5, [plain(value)], "small end")
    for value in ticks(chart.across.low, chart.across.high, chart.across.step):
        sheet.line([(x_of(value), head), (x_of(value), foot)], "hatch")
        sheet.text(x_of(value), foot + 18, [plain(value)], "small middle")
    sheet.line([(_LEFT, head), (_LEFT, foot), (_RIGHT, foot)], "ink")
    below = wrapped(chart.across.name, _RIGHT - 4, "label-strong")
    sheet.text(_RIGHT, foot + 38, below, "label-strong end")
    lines = [[(x_of(x), y_of(y)) for x, y in line.points] for line in chart.lines]
    for level in chart.levels:
        sheet.line([(_LEFT, y_of(level.at)), (_RIGHT, y_of(level.at))], "hidden-line")
    free = _Room(head=head, foot=foot, lines=lines)
    for level in chart.levels:
        box = free.take(y_of(level.at), width_of(level.name, "small"))
        sheet.rectangle(box.left - 3, box.top, box.right - box.left + 6, _NAME_HIGH, "fill-paper", 0)
        sheet.text(box.left, box.top + 13, [level.name], "small")
    for index, (line, points) in enumerate(zip(chart.lines, lines, strict=True)):
        sheet.line(points, _STROKES[index % len(_STROKES)][0])
        _mark(sheet, [(x_of(x), y_of(y)) for x, y in marked(line, chart.across)], index)
    bottom = _draw_legend(sheet, chart, foot + 62 + LINE * (len(below) - 1))
    return Drawn(svg=sheet.svg(bottom - 8), words=_said(chart))


def marked(line: Line, across: Scale) -> tuple[tuple[Number, Number], ...]:
    """The points of a line that are marked and said: all where they are few, else those at the marks of the scale."""
    if len(line.points) <= _MOST_MARKED:
        return line.points
    at = set(ticks(across.low, across.high, across.step))
    return tuple((x, y) for x, y in line.points if x in at) or (line.points[0], line.points[-1])


def _draw_legend(sheet: Sheet, chart: Chart, top: float) -> float:
    """Which line is which; returns where the next would stand."""
    if len(chart.lines) == 1 and not chart.lines[0].name:
        return top
    for index, line in enumerate(chart.lines):
        sheet.line([(_LEFT, top - 5), (_LEFT + 34, top - 5)], _STROKES[index % len(_STROKES)][0])
        _mark(sheet, [(_LEFT + 17, top - 5)], index)
        name = wrapped(line.name, WIDTH - _LEFT - 48, "label")
        sheet.text(_LEFT + 44, top, name, "label")
        top += 24 + LINE * (len(name) - 1)
    return top


def _mark(sheet: Sheet, points: Sequence[tuple[float, float]], index: int) -> None:
    stroke, fill = _STROKES[index % len(_STROKES)]
    for x, y in points:
        if index % _MARKS == 0:
            sheet.circle(x, y, 3.6, fill)
        elif index % _MARKS == 1:
            sheet.rectangle(x - 3.6, y - 3.6, 7.2, 7.2, fill, 0)
        else:
            sheet.circle(x, y, 4, f"{stroke} fill-paper")


def _said(chart: Chart) -> str:
    told = [f"{chart.up.name} / {chart.across.name}."]
    for line in chart.lines:
        values = "; ".join(f"{plain(x)} → {plain(y)}" for x, y in marked(line, chart.across))
        told.append(f"{line.name}: {values}." if line.name else f"{values}.")
    told += [f"{level.name}: {plain(level.at)}." for level in chart.levels]
    return " ".join(told)

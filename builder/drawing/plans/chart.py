"""Lines over a scale, with levels that matter."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from journeybook.drawing.plans.gauge import At
from journeybook.drawing.plans.sheet import Drawn, Sheet, plain, ticks, width_of

_LEFT, _RIGHT = 50.0, 386.0
_TOP, _FOOT = 34.0, 264.0
_STROKES = (("act", "fill-act"), ("ink", "fill-ink"), ("hold", "fill-hold"))
_MARKS = 3
"""Lines differ in their marks, too: full circles, squares, open circles."""


@dataclass(frozen=True, kw_only=True)
class Scale:
    """One side of a chart."""

    label: str
    unit: str
    low: float
    high: float
    step: float

    @property
    def name(self) -> str:
        """Label and unit."""
        return f"{self.label}, {self.unit}" if self.unit else self.label


@dataclass(frozen=True, kw_only=True)
class Line:
    """A line through points, from left to right."""

    name: str
    points: tuple[tuple[float, float], ...]


@dataclass(frozen=True, kw_only=True)
class Chart:
    """Lines over ``across``, their heights on ``up``; ``levels`` are heights with a name."""

    across: Scale
    up: Scale
    lines: tuple[Line, ...]
    levels: tuple[At, ...] = ()


def draw_chart(chart: Chart) -> Drawn:
    """A grid to read off from, the lines over it, and below it which line is which."""
    sheet = Sheet()

    def x_of(value: float) -> float:
        return _LEFT + (value - chart.across.low) / (chart.across.high - chart.across.low) * (_RIGHT - _LEFT)

    def y_of(value: float) -> float:
        return _FOOT - (value - chart.up.low) / (chart.up.high - chart.up.low) * (_FOOT - _TOP)

    sheet.text(4, 16, [chart.up.name], "label-strong")
    for value in ticks(chart.up.low, chart.up.high, chart.up.step):
        sheet.line([(_LEFT, y_of(value)), (_RIGHT, y_of(value))], "hatch")
        sheet.text(_LEFT - 7, y_of(value) + 5, [plain(value)], "small end")
    for value in ticks(chart.across.low, chart.across.high, chart.across.step):
        sheet.line([(x_of(value), _TOP), (x_of(value), _FOOT)], "hatch")
        sheet.text(x_of(value), _FOOT + 18, [plain(value)], "small middle")
    sheet.line([(_LEFT, _TOP), (_LEFT, _FOOT), (_RIGHT, _FOOT)], "ink")
    sheet.text(_RIGHT, _FOOT + 38, [chart.across.name], "label-strong end")
    for level in chart.levels:
        y = y_of(level.at)
        sheet.line([(_LEFT, y), (_RIGHT, y)], "hidden-line")
        at_left = _is_crowded_on_the_right(chart, level)
        sheet.text(
            _LEFT + 5 if at_left else _RIGHT - 3, y - 5, [level.name], "small" if at_left else "small end"
        )
    for index, line in enumerate(chart.lines):
        stroke, fill = _STROKES[index % len(_STROKES)]
        points = [(x_of(x), y_of(y)) for x, y in line.points]
        sheet.line(points, stroke)
        _mark(sheet, points, index, stroke, fill)
    top = _FOOT + 62
    if len(chart.lines) > 1 or chart.lines[0].name:
        for index, line in enumerate(chart.lines):
            stroke, fill = _STROKES[index % len(_STROKES)]
            sheet.line([(_LEFT, top - 5), (_LEFT + 34, top - 5)], stroke)
            _mark(sheet, [(_LEFT + 17, top - 5)], index, stroke, fill)
            sheet.text(_LEFT + 44, top, [line.name], "label")
            top += 24
    return Drawn(svg=sheet.svg(top - 8), words=_said(chart))


def _mark(sheet: Sheet, points: Sequence[tuple[float, float]], index: int, stroke: str, fill: str) -> None:
    for x, y in points:
        if index % _MARKS == 0:
            sheet.circle(x, y, 3.6, fill)
        elif index % _MARKS == 1:
            sheet.rectangle(x - 3.6, y - 3.6, 7.2, 7.2, fill, 0)
        else:
            sheet.circle(x, y, 4, f"{stroke} fill-paper")


def _is_crowded_on_the_right(chart: Chart, level: At) -> bool:
    """Whether a line passes where the level's name would stand on the right, above the level."""
    room = width_of(level.name, "small") / (_RIGHT - _LEFT) * (chart.across.high - chart.across.low)
    height = 22 / (_FOOT - _TOP) * (chart.up.high - chart.up.low)
    return any(
        x >= chart.across.high - room and level.at - height / 4 <= y <= level.at + height
        for line in chart.lines
        for x, y in line.points
    )


def _said(chart: Chart) -> str:
    told = [f"{chart.up.name} / {chart.across.name}."]
    for line in chart.lines:
        values = "; ".join(f"{plain(x)} → {plain(y)}" for x, y in line.points)
        told.append(f"{line.name}: {values}." if line.name else f"{values}.")
    told += [f"{level.name}: {plain(level.at)}." for level in chart.levels]
    return " ".join(told)

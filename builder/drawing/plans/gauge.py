"""A scale with what is good on it, marks that matter, and what was read."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.drawing.plans.callouts import call_out
from journeybook.drawing.plans.sheet import Drawn, Number, Sheet, first_mark, fitting_step, plain, ticks

_LEFT, _RIGHT = 24.0, 376.0
_HIGH = 30.0
"""Of the bar."""
_ROW = 20.0
_ANCHORS = {"middle": " middle", "start": "", "end": " end"}


@dataclass(frozen=True, kw_only=True)
class At:
    """A named place on a scale."""

    at: Number
    name: str


@dataclass(frozen=True, kw_only=True)
class Gauge:
    """A scale from ``low`` to ``high`` in a unit; ``good`` is the range that is accepted, if one is shown."""

    label: str
    unit: str
    low: Number
    high: Number
    marks: tuple[At, ...] = ()
    pointers: tuple[At, ...] = ()
    good: tuple[Number, Number] | None = None

    @property
    def title(self) -> str:
        """Label and unit."""
        return f"{self.label}, {self.unit}" if self.unit else self.label


def draw_gauge(gauge: Gauge) -> Drawn:
    """The scale lies; marks stand above it, what was read points up from below."""
    sheet = Sheet()

    def across(value: Number) -> float:
        return _LEFT + float((value - gauge.low) / (gauge.high - gauge.low)) * (_RIGHT - _LEFT)

    above = call_out([(across(mark.at), mark.name) for mark in gauge.marks])
    below = call_out([(across(pointer.at), pointer.name) for pointer in gauge.pointers])
    scale = 36 + _ROW * (max((callout.row for callout in above), default=-1) + 1)
    sheet.text(_LEFT, 16, [gauge.title], "label-strong")
    sheet.rectangle(_LEFT, scale, _RIGHT - _LEFT, _HIGH, "ink fill-paper", 0)
    if gauge.good:
        _draw_good(sheet, across(gauge.good[0]), across(gauge.good[1]), scale)
    step = fitting_step(gauge.low, gauge.high, 8)
    for value in ticks(first_mark(gauge.low, step), gauge.high, step):
        sheet.line([(across(value), scale + _HIGH), (across(value), scale + _HIGH + 7)], "ink")
        sheet.text(across(value), scale + _HIGH + 22, [plain(value)], "small middle")
    for mark, callout in zip(gauge.marks, above, strict=True):
        foot = scale - 9 - _ROW * callout.row
        begins = foot + 4 if callout.anchor == "middle" else foot - 11
        sheet.line([(callout.x, begins), (callout.x, scale + _HIGH)], "hold")
        sheet.text(callout.text_x, foot, [mark.name], f"label{_ANCHORS[callout.anchor]}")
    tip = scale + _HIGH + 30
    for pointer, callout in zip(gauge.pointers, below, strict=True):
        foot = tip + 33 + _ROW * callout.row
        sheet.shape([(callout.x, tip), (callout.x - 8, tip + 15), (callout.x + 8, tip + 15)], "fill-ink")
        ends = foot - 14 if callout.anchor == "middle" else foot + 2
        if callout.row or callout.anchor != "middle":
            sheet.line([(callout.x, tip + 15), (callout.x, ends)], "thin")
        sheet.text(callout.text_x, foot, [pointer.name], f"label{_ANCHORS[callout.anchor]}")
    lowest = max((callout.row for callout in below), default=-1)
    bottom = tip + 40 + _ROW * lowest if below else tip
    return Drawn(svg=sheet.svg(bottom), words=_said(gauge))


def _draw_good(sheet: Sheet, low: float, high: float, top: float) -> None:
    """Shade the range that is accepted; hatched too, so that a photocopy keeps it."""
    sheet.rectangle(low, top, high - low, _HIGH, "ink tint-2", 0)
    foot, rise = top + _HIGH - 4, _HIGH - 8
    start = low + 4 - rise
    while start < high - 8:
        left, right = max(start, low + 4), min(start + rise, high - 4)
        if right - left > 2:
            sheet.line([(left, foot - (left - start)), (right, foot - (right - start))], "hatch")
        start += 9


def _said(gauge: Gauge) -> str:
    unit = f" {gauge.unit}" if gauge.unit else ""
    told = [f"{gauge.label}: {plain(gauge.low)} – {plain(gauge.high)}{unit}."]
    if gauge.good:
        told.append(f"✓ {plain(gauge.good[0])} – {plain(gauge.good[1])}{unit}.")
    told += [f"{plain(one.at)}{unit}: {one.name}." for one in (*gauge.marks, *gauge.pointers)]
    return " ".join(told)

"""A scale with what is good on it, marks that matter, and what was read."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.drawing.plans.sheet import Drawn, Sheet, fitting_step, plain, ticks, width_of

_LEFT, _RIGHT = 24.0, 376.0
_ROW = 20.0


@dataclass(frozen=True, kw_only=True)
class At:
    """A named place on a scale."""

    at: float
    name: str


@dataclass(frozen=True, kw_only=True)
class Gauge:
    """A scale from ``low`` to ``high`` in a unit; ``good`` is the range that is accepted, if one is shown."""

    label: str
    unit: str
    low: float
    high: float
    marks: tuple[At, ...] = ()
    pointers: tuple[At, ...] = ()
    good: tuple[float, float] | None = None


def draw_gauge(gauge: Gauge) -> Drawn:
    """The scale lies; marks stand above it, what was read points up from below."""
    sheet = Sheet()

    def across(value: float) -> float:
        return _LEFT + (value - gauge.low) / (gauge.high - gauge.low) * (_RIGHT - _LEFT)

    above = _rows([(across(mark.at), mark.name) for mark in gauge.marks])
    below = _rows([(across(pointer.at), pointer.name) for pointer in gauge.pointers])
    scale = 34 + _ROW * (max(above, default=-1) + 1)
    sheet.text(_LEFT, 16, [f"{gauge.label}, {gauge.unit}" if gauge.unit else gauge.label], "label-strong")
    sheet.rectangle(_LEFT, scale, _RIGHT - _LEFT, 30, "ink fill-paper", 0)
    if gauge.good:
        low, high = across(gauge.good[0]), across(gauge.good[1])
        sheet.rectangle(low, scale, high - low, 30, "ink tint-2", 0)
        for stroke in range(int(low) + 8, int(high), 10):
            sheet.line([(stroke, scale + 27), (min(stroke + 12, high - 2), scale + 3)], "hatch")
    step = fitting_step(gauge.low, gauge.high, 8)
    for value in ticks(gauge.low, gauge.high, step):
        sheet.line([(across(value), scale + 30), (across(value), scale + 37)], "ink")
        sheet.text(across(value), scale + 52, [plain(value)], "small middle")
    for mark, row in zip(gauge.marks, above, strict=True):
        foot = scale - 10 - _ROW * (max(above) - row)
        sheet.line([(across(mark.at), foot + 4), (across(mark.at), scale + 30)], "hold")
        sheet.text(_inside(across(mark.at), mark.name), foot, [mark.name], "label middle")
    for pointer, row in zip(gauge.pointers, below, strict=True):
        x, tip = across(pointer.at), scale + 60
        sheet.shape([(x, tip), (x - 8, tip + 15), (x + 8, tip + 15)], "fill-ink")
        if row:
            # Beside its own name, so that the line strikes through no other.
            sheet.line([(x, tip + 15), (x, tip + 18 + _ROW * row)], "thin")
        sheet.text(_inside(x, pointer.name), tip + 33 + _ROW * row, [pointer.name], "label middle")
    bottom = scale + 64 + (30 + _ROW * (max(below) + 1) if below else 0)
    return Drawn(svg=sheet.svg(bottom), words=_said(gauge))


def _said(gauge: Gauge) -> str:
    unit = f" {gauge.unit}" if gauge.unit else ""
    told = [f"{gauge.label}: {plain(gauge.low)} – {plain(gauge.high)}{unit}."]
    if gauge.good:
        told.append(f"✓ {plain(gauge.good[0])} – {plain(gauge.good[1])}{unit}.")
    told += [f"{plain(one.at)}{unit}: {one.name}." for one in (*gauge.marks, *gauge.pointers)]
    return " ".join(told)


def _inside(x: float, words: str) -> float:
    """Where the middle of the words stands so that both their ends are on the sheet."""
    half = width_of(words, "label") / 2
    return min(max(x, half + 2), 398 - half)


def _rows(labels: list[tuple[float, str]]) -> list[int]:
    """A row for each label, so that no two in a row touch."""
    ends: list[list[tuple[float, float]]] = []
    rows: list[int] = []
    for x, words in labels:
        middle, half = _inside(x, words), width_of(words, "label") / 2 + 4
        span = (middle - half, middle + half)
        row = next(
            (
                index
                for index, taken in enumerate(ends)
                if all(span[1] <= low or span[0] >= high for low, high in taken)
            ),
            len(ends),
        )
        if row == len(ends):
            ends.append([])
        ends[row].append(span)
        rows.append(row)
    return rows

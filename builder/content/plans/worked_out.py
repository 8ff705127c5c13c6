"""A plan as it is drawn, from a plan as it is written; one method a kind."""

from __future__ import annotations

from typing import NamedTuple

from journeybook.content.file_read import FileRead
from journeybook.content.formats.plan_files import (
    BenchLineFile,
    ChartFile,
    DecisionFile,
    DoFile,
    GaugeFile,
    LineFile,
    PathFile,
    PlanFile,
    ScaleFile,
    StackFile,
    TimelineFile,
)
from journeybook.content.plans.bench_lines import bench_line
from journeybook.content.plans.decisions import check_decision
from journeybook.content.plans.values import Known, UnsoundError, Values, Where
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.plans.chart import Chart, Line, Scale
from journeybook.drawing.plans.decision import Ask, Decision, Do
from journeybook.drawing.plans.every_kind import Plan
from journeybook.drawing.plans.gauge import Gauge
from journeybook.drawing.plans.path import Path, Stop
from journeybook.drawing.plans.sheet import Number, fitting_step, plain
from journeybook.drawing.plans.stack import Layer, Stack
from journeybook.drawing.plans.timeline import Span, Timeline

MOST_MARKS = 16
"""Marks on one scale; more would touch each other."""


class PlanRead(NamedTuple):
    """A plan, None where anything in it is unsound; and what is wrong."""

    plan: Plan | None
    problems: list[Problem]


def work_out_plan(file: FileRead, known: Known) -> PlanRead:
    """The plan of a figure's file; of the two and nothing else, as ``FileRead.worked_out`` wants it."""
    values = Values(file=file, known=known)
    try:
        plan = _plan(file.value.draw, values)
    except UnsoundError:
        return PlanRead(None, values.problems)
    return PlanRead(plan if values.is_sound else None, values.problems)


def _plan(written: PlanFile, values: Values) -> Plan:
    match written:
        case StackFile():
            return _stack(written, values)
        case PathFile():
            return _path(written, values)
        case GaugeFile():
            return _gauge(written, values)
        case TimelineFile():
            return _timeline(written, values)
        case DecisionFile():
            return _decision(written, values)
        case ChartFile():
            return _chart(written, values)
    raise TypeError(written)


def _stack(written: StackFile, values: Values) -> Stack:
    return Stack(
        medium=values.text(written, "medium", written.medium),
        layers=tuple(
            Layer(
                name=values.text(one, "name", one.name),
                note=values.text(one, "note", one.note),
                look=one.look,
                thin=one.thin,
            )
            for one in written.layers
        ),
    )


def _path(written: PathFile, values: Values) -> Path:
    return Path(
        medium=values.text(written, "medium", written.medium),
        stops=tuple(
            Stop(name=values.text(one, "name", one.name), note=values.text(one, "note", one.note))
            for one in written.stops
        ),
    )


def _gauge(written: GaugeFile, values: Values) -> Gauge:
    low, high = values.ends(written, written.low, written.high)
    return Gauge(
        label=values.text(written, "label", written.label),
        unit=values.text(written, "unit", written.unit),
        low=low,
        high=high,
        marks=values.places(written.marks, low, high),
        pointers=values.places(written.pointers, low, high),
        good=values.part(written.good, low, high) if written.good else None,
    )


def _timeline(written: TimelineFile, values: Values) -> Timeline:
    low, high = values.ends(written, written.low, written.high)
    spans = []
    for one in written.spans:
        name, part = values.text(one, "name", one.name), values.part(one, low, high)
        if part is not None:
            spans.append(Span(low=part[0], high=part[1], name=name))
    return Timeline(
        label=values.text(written, "label", written.label),
        unit=values.text(written, "unit", written.unit),
        low=low,
        high=high,
        events=values.places(written.events, low, high),
        spans=tuple(spans),
    )


def _decision(written: DecisionFile, values: Values) -> Decision:
    problems = list(check_decision(values.file, written))
    values.problems += problems
    points = tuple(
        Do(id=one.id, do=values.text(one, "do", one.do), stop=one.stop)
        if isinstance(one, DoFile)
        else Ask(id=one.id, ask=values.text(one, "ask", one.ask), yes=one.yes, no=one.no)
        for one in written.points
    )
    if problems:
        raise UnsoundError
    if written.words is None:
        return Decision(start=written.start, points=points)
    return Decision(
        start=written.start,
        points=points,
        yes=values.text(written.words, "if-yes", written.words.yes),
        no=values.text(written.words, "if-no", written.words.no),
    )


def _chart(written: ChartFile, values: Values) -> Chart:
    across, up = _scale(written.across, values), _scale(written.up, values)
    return Chart(
        across=across,
        up=up,
        lines=tuple(
            bench_line(one, across, up, values)
            if isinstance(one, BenchLineFile)
            else _line(one, across, up, values)
            for one in written.lines
        ),
        levels=values.places(written.levels, up.low, up.high),
    )


def _scale(written: ScaleFile, values: Values) -> Scale:
    low, high = values.ends(written, written.low, written.high)
    step = values.number(Where(written, "step"), written.step) if written.step else fitting_step(low, high, 8)
    if step <= 0 or (high - low) / step > MOST_MARKS:
        values.refuse(
            "F027",
            Where(written, "step"),
            f"A step of {plain(step)} from {plain(low)} to {plain(high)} makes "
            + ("no marks." if step <= 0 else f"more than {MOST_MARKS} marks."),
            "Take a larger step, or leave `step` out.",
        )
        raise UnsoundError
    return Scale(
        label=values.text(written, "label", written.label),
        unit=values.text(written, "unit", written.unit),
        low=low,
        high=high,
        step=step,
    )


def _line(written: LineFile, across: Scale, up: Scale, values: Values) -> Line:
    points: list[tuple[Number, Number]] = []
    for index, (foot, side) in enumerate(written.points):
        where = Where(written, "points", index)
        x, y = values.number_if_sound(where, foot), values.number_if_sound(where, side)
        if x is None or y is None:
            continue
        values.on_scale(where, x, across.low, across.high)
        values.on_scale(where, y, up.low, up.high)
        if points and x <= points[-1][0]:
            values.refuse(
                "F029",
                where,
                f"This point stands at {plain(x)}, not to the right of the one before it.",
                "Write the points from left to right.",
            )
        points.append((x, y))
    return Line(name=values.text(written, "name", written.name), points=tuple(points))

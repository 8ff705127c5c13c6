"""Lines of a chart that a bench gives, from the very table that stands on the page."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from journeybook.content.arithmetic import round_half_away
from journeybook.content.fan_numbers import worked_out
from journeybook.content.fan_values import ShownControl, WorkedOut
from journeybook.content.formats.plan_files import BenchLineFile
from journeybook.content.model import FanBench
from journeybook.content.plans.line_units import check_line_units
from journeybook.content.plans.values import UnsoundError, Values, Where
from journeybook.drawing.plans.chart import Line, Scale
from journeybook.drawing.plans.sheet import plain
from journeybook.source.near import choice_of, nearest


def bench_line(written: BenchLineFile, across: Scale, up: Scale, values: Values) -> Line:
    """A reading at each place of one control that lies on the scale at the foot, from left to right."""
    worked = _worked_out(written, values)
    control = _control(written, worked, values)
    stands = _stands(written, worked, values)
    reading = next((one for one in worked.readings if one.id == written.of), None)
    if reading is None:
        _refuse_name(values, written, "of", "reading", written.of, [one.id for one in worked.readings])
        raise UnsoundError
    by = _divisor(written, values)
    check_line_units(written, worked.bench, across, up, by, values)
    points = []
    for number, place in enumerate(control.places):
        if across.low <= place.value <= across.high:
            found = worked.table.value(reading.id, {**stands, written.along: number})
            points.append((place.value, _divided(Fraction(found, 10**reading.places), by, reading.places)))
    points.sort()
    if len(points) < 2:
        values.refuse(
            "F030",
            Where(written, "along"),
            f"`{written.along}` has fewer than two places from {plain(across.low)} to {plain(across.high)}.",
            "Widen the scale at the foot, or take another control.",
        )
        raise UnsoundError
    for x, y in points:
        if not up.low <= y <= up.high:
            values.refuse(
                "F021",
                Where(written, "of"),
                f"At {plain(x)} the reading is {plain(y)}, which is not on the scale from {plain(up.low)} to "
                f"{plain(up.high)}.",
                "Widen the scale at the side, or correct `divide`.",
            )
            raise UnsoundError
    return Line(name=values.text(written, "name", written.name), points=tuple(points))


def _worked_out(written: BenchLineFile, values: Values) -> WorkedOut:
    """The bench in numbers; what is wrong with it is told where it stands."""
    bench = values.known.benches.get(written.bench)
    if bench is not None and not isinstance(bench, FanBench):
        values.refuse(
            "F030",
            Where(written, "bench"),
            f"`{written.bench}` is a bench without numbers.",
            "Name a bench of kind `fan`, or write `points`.",
        )
    worked = worked_out(bench, values.known.values) if isinstance(bench, FanBench) else []
    if isinstance(worked, list):
        raise UnsoundError
    return worked


def _control(written: BenchLineFile, worked: WorkedOut, values: Values) -> ShownControl:
    for control in worked.controls:
        if control.control.of == written.along:
            return control
    there = [control.control.of for control in worked.controls]
    _refuse_name(values, written, "along", "control", written.along, there)
    raise UnsoundError


def _stands(written: BenchLineFile, worked: WorkedOut, values: Values) -> dict[str, int]:
    """Control -> its place."""
    found = {control.control.of: control.start for control in worked.controls}
    controls = {control.control.of: control for control in worked.controls}
    for name, place in written.at.given.items():
        if name not in controls:
            _refuse_name(values, written, "at", "control", name, controls)
            raise UnsoundError
        if name == written.along:
            values.refuse(
                "F030",
                Where(written, "at"),
                f"The line runs along `{name}`, so `at` cannot hold it still.",
                f"Take `{name}` out of `at`, or run along another control.",
            )
            raise UnsoundError
        number = controls[name].find(place)
        if number is None:
            _refuse_name(
                values, written, "at", f"place of `{name}`", place, [one.id for one in controls[name].places]
            )
            raise UnsoundError
        found[name] = number
    return found


def _divisor(written: BenchLineFile, values: Values) -> Fraction:
    if not written.divide:
        return Fraction(1)
    by = values.number(Where(written, "divide"), written.divide)
    if by <= 0:
        values.refuse(
            "F020",
            Where(written, "divide"),
            f"Nothing can be divided by {plain(by)} here.",
            "Write a number above 0.",
        )
        raise UnsoundError
    return by


def _divided(value: Fraction, by: Fraction, places: int) -> Fraction:
    """The value in the unit of the chart; a quotient has two decimals more than the reading, as good as it is."""
    return value if by == 1 else round_half_away(value / by, places + 2)


def _refuse_name(
    values: Values, written: BenchLineFile, key: str, noun: str, name: str, there: Iterable[str]
) -> None:
    names = list(there)
    near = nearest(name, names) or tuple(names[:8])
    values.refuse(
        "F030",
        Where(written, key),
        f"The bench `{written.bench}` has no {noun} called `{name[:40]}`.",
        f"{choice_of(near)}.",
    )

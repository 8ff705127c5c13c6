"""What a fan bench describes, as the physics takes it: curve, filter, duct, motor and battery."""

from __future__ import annotations

import itertools
from fractions import Fraction

from journeybook.benches.battery import Battery
from journeybook.benches.fan import FanCurve
from journeybook.benches.fan_unit import FanUnit
from journeybook.content.fan_number_reader import NumberReader
from journeybook.content.model.fan_bench import FanBench

_NO_BATTERY = Battery(energy=1.0, cold=((20.0, 1.0),))
"""For a bench without one, whose minutes are never shown."""


def unit_of(read: NumberReader, bench: FanBench, flow: Fraction) -> FanUnit | None:
    """The unit; None after noting why not. ``flow``: L/min in one of the bench's units of flow."""
    curve = _curve(read, bench, flow)
    clean = read.number(bench.filter, "clean", bench.filter.clean)
    full = read.number(bench.filter, "full", bench.filter.full)
    if clean is not None and full is not None and full < clean:
        read.flaw(
            "N003",
            bench.filter,
            "full",
            "A full filter resists less than a clean one.",
            "Make `full` at least as large as `clean`.",
        )
    duct = read.number(bench, "duct", bench.duct)
    efficiency = read.number(bench, "efficiency", bench.efficiency, most=100, above=True)
    standby = read.number(bench, "standby", bench.standby, above=True)
    churning = read.number(bench, "churning", bench.churning)
    least_speed = read.number(bench, "least-speed", bench.least_speed, most=100)
    alarm = read.number(bench, "alarm-below", bench.alarm_below) if bench.alarm_below else Fraction(0)
    if bench.alarm_name and not bench.alarm_below:
        read.flaw(
            "N009",
            bench,
            "alarm-name",
            "Nothing sounds this alarm: the bench has no `alarm-below`.",
            "Add `alarm-below:`, the flow below which it sounds, or take `alarm-name` out.",
        )
    battery, battery_alarm = _battery(read, bench)
    if read.flaws or curve is None:
        return None
    assert clean is not None
    assert full is not None
    assert duct is not None
    assert efficiency is not None
    assert standby is not None
    assert churning is not None
    assert least_speed is not None
    assert alarm is not None
    return FanUnit(
        fan=curve,
        clean_filter=float(clean / flow),
        full_filter=float(full / flow),
        duct=float(duct / flow**2),
        efficiency=float(efficiency / 100),
        standby=float(standby),
        churning=float(churning),
        least_speed=float(least_speed / 100),
        battery=battery,
        alarm_below=float(alarm * flow),
        battery_alarm=battery_alarm,
    )


def _curve(read: NumberReader, bench: FanBench, flow: Fraction) -> FanCurve | None:
    points = []
    for point in bench.fan:
        at, pressure = read.number(point, "flow", point.flow), read.number(point, "pressure", point.pressure)
        if at is None or pressure is None:
            return None
        points.append((at, pressure))
    if points[0][0] != 0:
        read.flaw(
            "N002",
            bench.fan[0],
            "flow",
            "The fan's curve does not start at no flow.",
            'Start it with `flow: "0"`.',
        )
    for number, (before, after) in enumerate(itertools.pairwise(points), 1):
        if after[0] <= before[0] or after[1] >= before[1]:
            read.flaw(
                "N002",
                bench.fan[number],
                "pressure" if after[0] > before[0] else "flow",
                "The fan's curve does not fall: from point to point the flow has to rise and the pressure to fall.",
                "Put the points in order of their flow, and leave out any part of the curve that rises.",
            )
    if points[-1][1] != 0:
        read.flaw(
            "N002",
            bench.fan[-1],
            "pressure",
            "The fan's curve does not end at no pressure.",
            'End it with the flow with nothing in the way, and `pressure: "0"`.',
        )
    return FanCurve(tuple((float(at * flow), float(pressure)) for at, pressure in points))


def _battery(read: NumberReader, bench: FanBench) -> tuple[Battery, float]:
    described = bench.battery
    if described is None:
        return _NO_BATTERY, 0.0
    energy = read.number(described, "energy", described.energy, above=True)
    alarm = read.number(described, "alarm", described.alarm, most=99)
    shares: list[tuple[float, float]] = []
    for share in described.cold:
        at = read.number(share, "at", share.at, least=-100, most=100)
        gives = read.number(share, "gives", share.gives, most=100, above=True)
        if at is None or gives is None:
            continue
        if shares and float(at) <= shares[-1][0]:
            read.flaw(
                "N005",
                share,
                "at",
                "The temperatures of the battery do not rise.",
                "Put the coldest first, and each once.",
            )
        shares.append((float(at), float(gives / 100)))
    if energy is None or alarm is None:
        return _NO_BATTERY, 0.0
    return Battery(energy=float(energy), cold=tuple(shares) or ((20.0, 1.0),)), float(alarm)

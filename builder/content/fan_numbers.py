"""Works a fan bench out: its texts and the values of the sheets become numbers, or a list of what is wrong."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from fractions import Fraction

from journeybook.benches.table import Reading
from journeybook.content.fan_controls import control_of, fixed_of
from journeybook.content.fan_description import unit_of
from journeybook.content.fan_number_reader import FanFlaw, NumberReader
from journeybook.content.fan_values import NATIVE, WorkedOut
from journeybook.content.model.fan_bench import FanBench
from journeybook.content.number_values import Sheets
from journeybook.content.units import canonical_unit, factor_between

MOST_PLACES = 20_000
"""How many places the grid of one bench may have."""
MOST_DECIMALS = 3
"""Decimal places of a reading, at most."""


def worked_out(bench: FanBench, sheets: Sheets) -> WorkedOut | list[FanFlaw]:
    """The bench with all its numbers, or everything that is wrong with them."""
    read = NumberReader(sheets)
    found = _whole(read, bench)
    return read.flaws if found is None or read.flaws else found


def _whole(read: NumberReader, bench: FanBench) -> WorkedOut | None:
    flow = factor_between(canonical_unit(bench.flow_unit) or "", "L/min")
    if flow is None:
        read.flaw(
            "N009",
            bench,
            "flow-unit",
            f"`{bench.flow_unit[:40]}` is no unit of flow.",
            "Write a unit such as `L/min` or `m3/h`.",
        )
        flow = Fraction(1)
    unit = unit_of(read, bench, flow)
    controls = tuple(
        one for control in bench.controls if (one := control_of(read, bench, control, flow)) is not None
    )
    fixed = fixed_of(read, bench, flow)
    readings, units = _readings(read, bench)
    places = math.prod(len(one.places) for one in controls)
    if places > MOST_PLACES:
        read.flaw(
            "N007",
            bench,
            "controls",
            f"Together the controls have {places} places; at most {MOST_PLACES} are worked out.",
            "Take a control out, or give it fewer places.",
        )
    if unit is None or read.flaws:
        return None
    found = WorkedOut(
        bench=bench,
        unit=unit,
        controls=controls,
        fixed=fixed,
        flow_factor=flow,
        readings=readings,
        units=units,
    )
    chosen = {shown.of for shown in bench.readings if shown.places is None}
    return replace(found, readings=_with_places(found, chosen)) if chosen else found


def _with_places(found: WorkedOut, chosen: set[str]) -> tuple[Reading, ...]:
    """The readings; those whose author names no ``places`` have enough for two figures of their largest value.

    Largest is what stands at the ends of the controls, and where the bench starts: 82 W in kW is then 0.082, not 0.
    """
    ends = [
        {one.places[0].value, one.places[-1].value, one.places[one.start].value} for one in found.controls
    ]
    names = [one.control.of for one in found.controls]
    largest = dict.fromkeys(chosen, 0.0)
    for values in itertools.product(*ends):
        shown = found.exactly(
            {name: found.native(name, value) for name, value in zip(names, values, strict=True)}
        )
        largest = {name: max(most, abs(shown[name])) for name, most in largest.items()}
    return tuple(
        Reading(id=one.id, places=_places_for(largest[one.id])) if one.id in chosen else one
        for one in found.readings
    )


def _places_for(value: float) -> int:
    return next((places for places in range(MOST_DECIMALS) if value * 10**places >= 9.5), MOST_DECIMALS)


def _readings(read: NumberReader, bench: FanBench) -> tuple[tuple[Reading, ...], dict[str, str]]:
    found: dict[str, Reading] = {}
    units: dict[str, str] = {}
    for shown in bench.readings:
        unit = canonical_unit(shown.unit)
        if unit is None or factor_between(NATIVE[shown.of], unit) is None:
            read.flaw(
                "N009",
                shown,
                "unit",
                f"{shown.of} cannot be shown in `{shown.unit[:40]}`.",
                f"Write a unit such as `{NATIVE[shown.of]}`.",
            )
        lacking = {
            "minutes": bench.battery is None and "battery",
            "shown": not bench.indicator and "indicator",
        }
        if lack := lacking.get(shown.of):
            read.flaw(
                "N009",
                shown,
                "of",
                f"Nothing gives the reading {shown.of}: the bench has no {lack}.",
                f"Add `{lack}:`, or take the reading out.",
            )
        if shown.of in found:
            read.flaw(
                "N006", shown, "of", f"The reading {shown.of} stands twice.", "Take one of the two out."
            )
        found[shown.of] = Reading(id=shown.of, places=shown.places or 0)
        units[shown.of] = unit or shown.unit
    drawn = {"flow": True, "speed": True, "shown": bench.indicator, "minutes": bench.battery is not None}
    for name, wanted in drawn.items():
        if wanted and name not in found:
            found[name] = Reading(id=name, places=0)
            units[name] = NATIVE[name]
    for name, there in (("low-flow", bench.alarm_below), ("low-battery", bench.battery)):
        if there:
            found[name] = Reading(id=name, places=0)
            units[name] = ""
    return tuple(found.values()), units

"""A fan bench with all its numbers: the unit, the places of its controls, its readings, and its table.

The cross-checks, the marking keys and the pages all work from here (``fan_numbers.worked_out`` makes it), so that what
was checked is what is shown and marked.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from journeybook.benches.fan_unit import Circumstances, FanUnit
from journeybook.benches.table import Axis, Reading, Table, tabulate
from journeybook.content.arithmetic import decimal_text
from journeybook.content.model.fan_bench import FanBench, FanControl
from journeybook.content.units import factor_between

NATIVE: Mapping[str, str] = {
    "flow": "L/min",
    "shown": "L/min",
    "speed": "%",
    "pressure": "Pa",
    "power": "W",
    "minutes": "min",
}
"""The unit in which the physics gives each reading."""
ALARMS = ("low-flow", "low-battery")


@dataclass(frozen=True, kw_only=True)
class ShownPlace:
    """A place of a control as it is named and shown."""

    id: str
    """What ``start`` calls it: the author's id, or the value."""
    value: Fraction
    label: str
    """Empty for a place of a range, whose value is shown."""


@dataclass(frozen=True, kw_only=True)
class ShownControl:
    """A control with its places."""

    control: FanControl
    places: tuple[ShownPlace, ...]
    start: int

    @property
    def is_range(self) -> bool:
        """True where its places are values without names."""
        return self.control.range is not None

    def find(self, name: str) -> int | None:
        """The number of a place by its id, or by its value as a decimal."""
        return place_named(self.places, name)


@dataclass(frozen=True, kw_only=True)
class WorkedOut:
    """A bench whose numbers are all known."""

    bench: FanBench
    unit: FanUnit
    controls: tuple[ShownControl, ...]
    fixed: tuple[tuple[str, float], ...]
    """The value of what is no control."""
    flow_factor: Fraction
    """L/min in one of the bench's units of flow."""
    readings: tuple[Reading, ...]
    """Those that are shown first, then what only the drawing needs, then the alarms."""
    units: Mapping[str, str]
    """Reading -> the unit of its integers."""

    @property
    def table(self) -> Table:
        """The whole grid; remembered."""
        axes = tuple(
            Axis(
                id=one.control.of,
                values=tuple(self.native(one.control.of, place.value) for place in one.places),
            )
            for one in self.controls
        )
        scales = tuple((reading.id, self.scale(reading.id)) for reading in self.readings)
        return fan_table(self.unit, axes, self.readings, self.fixed, scales)

    def exactly(self, places: Mapping[str, float]) -> dict[str, float]:
        """Every reading in its unit at any value of the controls (in their units), worked out and not looked up."""
        found = self.unit.at(Circumstances(**{**dict(self.fixed), **places}))
        return {reading.id: found[reading.id] * self.scale(reading.id) for reading in self.readings}

    def native(self, control: str, value: Fraction) -> float:
        """A value of a control in the unit that the physics takes."""
        return float(value * self.flow_factor if control == "setting" else value)

    def scale(self, reading: str) -> float:
        """By what the physics' own value of a reading is multiplied to be shown in its unit."""
        native = NATIVE.get(reading)
        factor = factor_between(native, self.units[reading]) if native else None
        return float(factor) if factor is not None else 1.0


@lru_cache(maxsize=64)
def fan_table(
    unit: FanUnit,
    axes: tuple[Axis, ...],
    readings: tuple[Reading, ...],
    fixed: tuple[tuple[str, float], ...],
    scales: tuple[tuple[str, float], ...],
) -> Table:
    """The grid of a unit; a preview that loads a course again finds it here."""
    standing, scale = dict(fixed), dict(scales)

    def at(now: Mapping[str, float]) -> Mapping[str, float]:
        found = unit.at(Circumstances(**{**standing, **now}))
        return {name: found[name] * by for name, by in scale.items()}

    return tabulate(axes, readings, at)


def place_named(places: tuple[ShownPlace, ...], name: str) -> int | None:
    """The number of a place by its id, or by its value as a decimal."""
    for number, place in enumerate(places):
        if place.id == name or decimal_text(place.value) == name:
            return number
    return None

"""A bench of kind ``fan``: a fan that blows through a filter and a duct, as its author describes it.

Numbers are texts, as written: a decimal, or the value of a sheet in braces. ``content.fan_values`` works them out.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import ClassVar

from journeybook.content.model.benches import Bench, Stand
from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class CurvePoint:
    """A point of the fan's curve at full speed, in air of 20 degrees Celsius at sea level."""

    flow: str
    pressure: str
    """Pa."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class ColdShare:
    """Which share of its energy the battery gives at a temperature."""

    at: str
    """Degrees Celsius."""
    gives: str
    """Percent."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class BatteryOfBench:
    """The battery as described."""

    energy: str
    """Wh when new, full and at 20 degrees Celsius."""
    alarm: str
    """Charge in percent at which the low-battery alarm sounds."""
    cold: tuple[ColdShare, ...] = ()
    place: Place


@dataclass(frozen=True, kw_only=True)
class FilterOfBench:
    """Resistance of the filter in Pa for each unit of flow."""

    clean: str
    full: str
    """At a load of 100 percent."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class ControlPlace:
    """One place of a control that has named places."""

    id: str
    value: str
    label: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class ControlRange:
    """Evenly spaced places of a control."""

    least: str
    """YAML key ``from``."""
    most: str
    """YAML key ``to``."""
    step: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class FanControl:
    """Something that the learner can change: named places or a range of them."""

    of: str
    """One of ``benches.fan_unit.CONTROLS``."""
    label: str
    unit: str = ""
    """Shown after the values of a range."""
    places: tuple[ControlPlace, ...] = ()
    range: ControlRange | None = None
    start: str
    """Where it stands at first: the id of a place, or a value of the range."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class FanReading:
    """Something that can be read off."""

    of: str
    """One of ``benches.fan_unit.READINGS`` that is a number."""
    label: str
    unit: str
    places: int | None = None
    """Decimal places that are shown, and on which goals are judged; None: as many as show two figures that count."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class FanParts:
    """What the parts on the path are called here."""

    inlet: str = ""
    filter: str = ""
    fan: str = ""
    duct: str = ""
    outlet: str = ""


@dataclass(frozen=True, kw_only=True)
class FanBench(Bench):
    """A fan on a path of air."""

    kind: ClassVar[str] = "fan"

    flow_unit: str = "L/min"
    """The unit in which flows stand in its description."""
    fan: tuple[CurvePoint, ...]
    filter: FilterOfBench
    duct: str
    """Pa for each square of a unit of flow, fully open."""
    efficiency: str
    """Percent of the electrical power that reaches the air."""
    standby: str
    """W whatever the fan does."""
    churning: str = "0"
    """W at full speed only to turn."""
    least_speed: str = "0"
    """Percent of full speed."""
    battery: BatteryOfBench | None = None
    alarm_below: str = ""
    """The flow below which the low-flow alarm sounds; empty where there is none."""
    alarm_name: str = ""
    """What that alarm is called here; empty for our word."""
    indicator: bool = False
    """True where a float in a tube shows the flow."""
    parts: FanParts = field(default_factory=FanParts)
    fixed: Stand = field(default_factory=Stand)
    """Values of what is no control."""
    controls: tuple[FanControl, ...]
    readings: tuple[FanReading, ...]

"""A fan that blows through a filter and a duct, held at a set flow: what its dials show under each set of
circumstances.

What is simplified, and said on the bench: the controller holds the true volume flow; what motor and fan lose goes
with the laws of fans; a filter's resistance grows in proportion to its load; the battery gives its energy at an
even rate; the air is dry.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from journeybook.benches.atmosphere import density, viscosity
from journeybook.benches.battery import Battery
from journeybook.benches.fan import FanCurve
from journeybook.benches.indicator import reading
from journeybook.benches.operating_point import Path, controlled

CONTROLS = ("setting", "load", "opening", "temperature", "height", "charge")
"""What a bench of this kind can let the learner change:

wanted flow in L/min; load of the filter, opening of the duct and charge of the battery in percent; temperature in
degrees Celsius; height in m.
"""

READINGS = ("flow", "shown", "speed", "pressure", "power", "minutes", "low-flow", "low-battery")
"""What can be read off:

true flow in L/min; what the float shows in L/min; speed in percent of full speed; pressure in Pa; electrical power
in W; minutes until the low-battery alarm; the two alarms as 0 or 1.
"""

REFERENCE_TEMPERATURE = 20.0
"""Degrees Celsius at sea level: the air in which fan, filter and float were measured."""


@dataclass(frozen=True, kw_only=True)
class Circumstances:
    """Where every control stands. A control that a bench does not have stands where its description says."""

    setting: float
    load: float
    opening: float
    temperature: float
    height: float
    charge: float


@dataclass(frozen=True, kw_only=True)
class FanUnit:
    """A fan, its path, its controller, its battery and its indicator.

    Units as in ``CONTROLS`` and ``READINGS``.
    """

    fan: FanCurve
    clean_filter: float
    """Pa per L/min of a new filter."""
    full_filter: float
    """Pa per L/min at a load of 100 percent."""
    duct: float
    """Pa per (L/min) squared with the duct fully open."""
    efficiency: float
    """Power given to the air over the electrical power that it takes, 0 to 1."""
    standby: float
    """W that are taken whatever the fan does."""
    churning: float
    """W that the fan takes at full speed in reference air only to turn;

    goes with density and the cube of speed.
    """
    least_speed: float
    """Share of full speed below which the controller does not go."""
    battery: Battery
    alarm_below: float
    """L/min: a lower true flow makes the low-flow alarm sound."""
    battery_alarm: float
    """Charge in percent at which the low-battery alarm sounds."""

    def at(self, now: Circumstances) -> Mapping[str, float]:
        """Every reading under the circumstances."""
        reference = density(0.0, REFERENCE_TEMPERATURE)
        here = density(now.height, now.temperature)
        dense = here / reference
        point = controlled(
            self.fan,
            self.path(now),
            wanted=now.setting,
            density=dense,
            least_speed=self.least_speed,
        )
        turning = self.churning * dense * point.speed**3
        watts = self.standby + turning + point.air_power / self.efficiency
        return {
            "flow": point.flow,
            "shown": reading(point.flow, density=here, calibrated_at=reference),
            "speed": 100 * point.speed,
            "pressure": point.pressure,
            "power": watts,
            "minutes": self.battery.minutes(
                watts=watts,
                celsius=now.temperature,
                charge=now.charge / 100,
                down_to=self.battery_alarm / 100,
            ),
            "low-flow": float(point.flow < self.alarm_below * (1 - 1e-9)),
            "low-battery": float(now.charge <= self.battery_alarm),
        }

    def path(self, now: Circumstances) -> Path:
        """What stands in the way:

        laminar resistance goes with viscosity, turbulent with density and, as in an orifice, with the inverse
        square of the opening.
        """
        thick = viscosity(now.temperature) / viscosity(REFERENCE_TEMPERATURE)
        dense = density(now.height, now.temperature) / density(0.0, REFERENCE_TEMPERATURE)
        filter_now = self.clean_filter + (self.full_filter - self.clean_filter) * now.load / 100
        opening = now.opening / 100
        return Path(
            laminar=filter_now * thick,
            turbulent=self.duct * dense / opening**2 if opening > 0 else math.inf,
        )

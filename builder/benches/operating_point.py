"""Where a fan settles on a path that resists: exactly, because the curve is straight from point to point.

The path takes ``laminar * flow + turbulent * flow**2``: a filter's fine pores resist in proportion to the flow
(Darcy's law), bends, joints and openings with its square. A flow is in L/min, a pressure in Pa.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from journeybook.benches.fan import FanCurve


@dataclass(frozen=True)
class Path:
    """What stands in the way of the air."""

    laminar: float
    """Pa per L/min."""
    turbulent: float
    """Pa per (L/min) squared; infinite where nothing gets through."""

    def pressure(self, flow: float) -> float:
        """Pa needed to push ``flow`` L/min through."""
        return 0.0 if flow == 0 else self.laminar * flow + self.turbulent * flow**2


@dataclass(frozen=True, kw_only=True)
class OperatingPoint:
    """What the air does: flow in L/min, pressure in Pa, speed as a share of full speed."""

    flow: float
    pressure: float
    speed: float

    @property
    def air_power(self) -> float:
        """W given to the air: pressure times volume flow."""
        return self.pressure * self.flow / 60_000


def at_speed(fan: FanCurve, path: Path, *, speed: float, density: float) -> OperatingPoint:
    """Where the fan settles when it turns at a fixed speed.

    ``speed`` and ``density`` as in ``FanCurve.pressure``.
    """
    if math.isinf(path.turbulent):
        return OperatingPoint(flow=0.0, pressure=fan.pressure(0.0, speed=speed, density=density), speed=speed)
    for segment in fan.segments():
        # speed^2 density (offset + slope flow/speed) = laminar flow + turbulent flow^2
        flow = _positive_root(
            path.turbulent,
            path.laminar - speed * density * segment.slope,
            -(speed**2) * density * segment.offset,
        )
        if flow <= segment.high * speed:
            return OperatingPoint(flow=flow, pressure=path.pressure(flow), speed=speed)
    flow = fan.free_flow * speed
    return OperatingPoint(flow=flow, pressure=0.0, speed=speed)


def at_flow(fan: FanCurve, path: Path, *, flow: float, density: float) -> OperatingPoint | None:
    """How fast the fan must turn to hold a flow; None where full speed is not enough."""
    needed = path.pressure(flow)
    if flow > fan.free_flow or needed > fan.pressure(flow, density=density):
        return None
    for segment in fan.segments():
        # density (offset speed^2 + slope flow speed) = needed, and flow / speed lies within the segment
        speed = _positive_root(density * segment.offset, density * segment.slope * flow, -needed)
        if speed > 0 and segment.low <= flow / speed <= segment.high * (1 + 1e-12):
            return OperatingPoint(flow=flow, pressure=needed, speed=speed)
    return OperatingPoint(flow=flow, pressure=needed, speed=flow / fan.free_flow)


def controlled(
    fan: FanCurve, path: Path, *, wanted: float, density: float, least_speed: float = 0.0
) -> OperatingPoint:
    """Where a controller settles that holds the wanted flow, between its least speed and full speed."""
    held = at_flow(fan, path, flow=wanted, density=density)
    if held is None:
        return at_speed(fan, path, speed=1.0, density=density)
    if held.speed < least_speed:
        return at_speed(fan, path, speed=least_speed, density=density)
    return held


def _positive_root(a: float, b: float, c: float) -> float:
    """The larger root of ``a x^2 + b x + c`` with ``c`` not above 0 and ``a`` not below 0, without
    cancellation."""
    if a == 0:
        return -c / b
    root = math.sqrt(b * b - 4 * a * c)
    return (-b + root) / (2 * a) if b <= 0 else -2 * c / (b + root)

"""A fan: how much pressure it makes at which flow, at any speed and in any air.

The curve is given for full speed as points with straight lines between them. Other speeds and other air follow
from the affinity laws (flow goes with speed, pressure with speed squared and with density, and so power with speed
cubed): ISO 13349 and fan handbooks; from memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise


@dataclass(frozen=True, kw_only=True)
class Segment:
    """A straight piece of the curve: ``pressure = offset + slope * flow`` for flows from ``low`` to ``high``."""

    low: float
    high: float
    offset: float
    slope: float


@dataclass(frozen=True)
class FanCurve:
    """Pressure over flow at full speed in air of the reference density. L/min and Pa.

    Flows rise from 0, pressures fall, and the last pressure is 0: there the fan blows freely. ``content`` has made
    sure of it.
    """

    points: tuple[tuple[float, float], ...]

    @property
    def free_flow(self) -> float:
        """The flow in L/min with nothing in the way, at full speed."""
        return self.points[-1][0]

    def segments(self) -> Iterator[Segment]:
        """The straight pieces, from no flow to free flow."""
        for (low, at_low), (high, at_high) in pairwise(self.points):
            slope = (at_high - at_low) / (high - low)
            yield Segment(low=low, high=high, offset=at_low - slope * low, slope=slope)

    def pressure(self, flow: float, *, speed: float = 1.0, density: float = 1.0) -> float:
        """Pressure in Pa at a flow in L/min.

        ``speed`` is a share of full speed, ``density`` a multiple of the reference density. Negative beyond the
        free flow.
        """
        at_full = flow / speed
        *_, last = (segment for segment in self.segments() if segment.low <= at_full or segment.low == 0)
        return speed**2 * density * (last.offset + last.slope * at_full)

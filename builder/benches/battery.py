"""How long a battery runs something: what it can give, divided by what is taken."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Battery:
    """A pack.

    ``cold`` tells which share of its energy it gives at which temperature; straight lines between the points.
    """

    energy: float
    """Wh when new, full and warm."""
    cold: tuple[tuple[float, float], ...]
    """(degrees Celsius, share), temperatures rising; beyond the ends the nearest share holds."""

    def share_at(self, celsius: float) -> float:
        """The share of its energy that it gives at a temperature."""
        temperatures = [at for at, _ in self.cold]
        index = bisect_right(temperatures, celsius)
        if index == 0:
            return self.cold[0][1]
        if index == len(self.cold):
            return self.cold[-1][1]
        (low, at_low), (high, at_high) = self.cold[index - 1], self.cold[index]
        return at_low + (at_high - at_low) * (celsius - low) / (high - low)

    def minutes(self, *, watts: float, celsius: float, charge: float = 1.0, down_to: float = 0.0) -> float:
        """Minutes from a charge down to another, both shares of a full pack, while ``watts`` are taken all the
        time."""
        usable = max(0.0, charge - down_to)
        return 60 * self.energy * self.share_at(celsius) * usable / watts

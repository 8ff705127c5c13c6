"""A grid of controls, and for each place on it what can be read off: integers, in the order of the grid.

The last control runs fastest. An integer is the value times ten to the power of the reading's places, halves
rounded away from zero, so that the table is the same on every machine and is looked up, never worked out, in a
browser.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from itertools import product
from math import prod


@dataclass(frozen=True, kw_only=True)
class Axis:
    """One control and its places."""

    id: str
    values: tuple[float, ...]
    """What the control stands for at each place, in its unit."""


@dataclass(frozen=True, kw_only=True)
class Reading:
    """Something that can be read off, and to how many decimal places."""

    id: str
    places: int


@dataclass(frozen=True, kw_only=True)
class Table:
    """The computed grid."""

    axes: tuple[Axis, ...]
    readings: tuple[Reading, ...]
    columns: Mapping[str, tuple[int, ...]]
    """For each reading one integer for each place of the grid."""

    def index(self, places: Mapping[str, int]) -> int:
        """Where on the grid the controls' places are.

        Raises KeyError for a control left out, IndexError beyond its end.
        """
        found = 0
        for axis in self.axes:
            place = places[axis.id]
            if not 0 <= place < len(axis.values):
                raise IndexError(f"{axis.id} has no place {place}")
            found = found * len(axis.values) + place
        return found

    def value(self, reading: str, places: Mapping[str, int]) -> int:
        """The integer at those places."""
        return self.columns[reading][self.index(places)]

    def everywhere(self) -> Iterator[dict[str, int]]:
        """Every place of the grid, in the table's order."""
        for combination in product(*(range(len(axis.values)) for axis in self.axes)):
            yield {axis.id: place for axis, place in zip(self.axes, combination, strict=True)}

    @property
    def size(self) -> int:
        """How many places the grid has."""
        return prod(len(axis.values) for axis in self.axes)


def tabulate(
    axes: tuple[Axis, ...],
    readings: tuple[Reading, ...],
    at: Callable[[Mapping[str, float]], Mapping[str, float]],
) -> Table:
    """Work out every reading at every place; ``at`` takes the controls' values and returns the readings'."""
    columns: dict[str, list[int]] = {reading.id: [] for reading in readings}
    for combination in product(*(axis.values for axis in axes)):
        found = at({axis.id: value for axis, value in zip(axes, combination, strict=True)})
        for reading in readings:
            columns[reading.id].append(scaled(found[reading.id], reading.places))
    return Table(axes=axes, readings=readings, columns={id: tuple(column) for id, column in columns.items()})


def scaled(value: float, places: int) -> int:
    """The value as an integer of its last decimal place."""
    # Twelve digits are far finer than any reading and coarser than the noise of floating point.
    digits = Decimal(f"{value:.12g}")
    return int(digits.scaleb(places).quantize(Decimal(1), rounding=ROUND_HALF_UP))

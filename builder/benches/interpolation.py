"""A column of a table as a page holds it, and what it says at and between the places of the grid.

Twin of ``site_overrides/js/pure/bench-table.js``; both run ``tests/vectors/bench-table.json``. Only what is shown is
taken from between the places, never what is marked.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise, product


@dataclass(frozen=True, kw_only=True)
class Column:
    """The integers of one reading, without the controls that it does not depend on."""

    along: tuple[int, ...]
    """The numbers of the axes it depends on, in the table's order."""
    counts: tuple[int, ...]
    """How many places each of those has."""
    values: tuple[int, ...]
    """The last axis runs fastest."""

    @property
    def steps(self) -> list[int]:
        """The first value, then from each to the next: small numbers, which compress well."""
        return [*self.values[:1], *(later - earlier for earlier, later in pairwise(self.values))]

    @classmethod
    def from_steps(cls, along: Sequence[int], counts: Sequence[int], steps: Sequence[int]) -> Column:
        """The column again from ``steps``."""
        return cls(along=tuple(along), counts=tuple(counts), values=tuple(accumulate(steps)))

    def at(self, places: Sequence[float]) -> float:
        """The value at a place of each axis of the table, counted from 0; multilinear between the places."""
        low, share = [], []
        for axis, count in zip(self.along, self.counts, strict=True):
            place = min(max(places[axis], 0.0), count - 1.0)
            below = min(math.floor(place), max(count - 2, 0))
            low.append(below)
            share.append(place - below)
        found = 0.0
        for corner in product((0, 1), repeat=len(low)):
            weight = 1.0
            index = 0
            for below, part, up, count in zip(low, share, corner, self.counts, strict=True):
                weight *= part if up else 1 - part
                index = index * count + min(below + up, count - 1)
            if weight != 0:
                found += weight * self.values[index]
        return found


def slimmed(counts: Sequence[int], values: Sequence[int]) -> Column:
    """The column of a whole grid without the axes along which nothing in it changes."""
    along = list(range(len(counts)))
    kept, rest = list(counts), list(values)
    for axis in reversed(range(len(counts))):
        inner = math.prod(kept[axis + 1 :])
        outer = math.prod(kept[:axis])
        count = kept[axis]
        first = [rest[(block * count) * inner : (block * count) * inner + inner] for block in range(outer)]
        if all(
            rest[(block * count + place) * inner : (block * count + place + 1) * inner] == first[block]
            for block in range(outer)
            for place in range(1, count)
        ):
            rest = [value for piece in first for value in piece]
            del kept[axis], along[axis]
    return Column(along=tuple(along), counts=tuple(kept), values=tuple(rest))

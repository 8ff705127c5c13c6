"""Names of places along a line, in rows away from it, so that no two touch and no pointer strikes a name through."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from journeybook.drawing.plans.letters import width_of
from journeybook.drawing.plans.sheet import WIDTH

_GAP = 7.0
"""Between a name and whatever stands beside it."""
_EDGE = 2.0
_MOST_TRIED = 4_000


@dataclass(frozen=True, kw_only=True)
class Callout:
    """Where a name stands."""

    x: float
    """Of its place on the line."""
    left: float
    right: float
    row: int
    """0 is next to the line."""
    anchor: str
    """``middle`` below its place, ``start`` to the right of its pointer, ``end`` to the left of it."""

    @property
    def text_x(self) -> float:
        """Where its anchor stands."""
        return {"middle": (self.left + self.right) / 2, "start": self.left, "end": self.right}[self.anchor]


def call_out(places: Sequence[tuple[float, str]], look: str = "label") -> list[Callout]:
    """A callout for each place (``x`` and name), as near to the line as can be."""
    order = sorted(range(len(places)), key=lambda index: places[index][0])
    names = [(places[index][0], width_of(places[index][1], look)) for index in order]
    best = _Search(names).best()
    return [best[order.index(index)] for index in range(len(places))]


class _Search:
    """Tries rows and sides from left to right, nearest rows first, and keeps the way of least distance."""

    def __init__(self, names: list[tuple[float, float]]) -> None:
        self._names = names
        self._tried = 0
        self._cost = float("inf")
        # Each in a row of its own: always possible, seldom beautiful.
        self._best = [self._options(x, wide, row)[0] for row, (x, wide) in enumerate(names)]

    def best(self) -> list[Callout]:
        self._go_on([], 0.0)
        return self._best

    def _go_on(self, placed: list[Callout], cost: float) -> None:
        self._tried += 1
        if cost >= self._cost or self._tried > _MOST_TRIED:
            return
        if len(placed) == len(self._names):
            self._cost, self._best = cost, list(placed)
            return
        x, wide = self._names[len(placed)]
        for row in range(len(self._names)):
            for number, option in enumerate(self._options(x, wide, row)):
                if all(_are_apart(option, other) for other in placed):
                    self._go_on([*placed, option], cost + 10 * row + number)

    @staticmethod
    def _options(x: float, wide: float, row: int) -> list[Callout]:
        middle = min(max(x - wide / 2, _EDGE), WIDTH - _EDGE - wide)
        found = [Callout(x=x, left=middle, right=middle + wide, row=row, anchor="middle")]
        if x + _GAP + wide <= WIDTH - _EDGE:
            found.append(Callout(x=x, left=x + _GAP, right=x + _GAP + wide, row=row, anchor="start"))
        if x - _GAP - wide >= _EDGE:
            found.append(Callout(x=x, left=x - _GAP - wide, right=x - _GAP, row=row, anchor="end"))
        return found


def _are_apart(one: Callout, other: Callout) -> bool:
    if one.row == other.row and one.left < other.right + _GAP and other.left < one.right + _GAP:
        return False
    return not (_strikes(one, other) or _strikes(other, one))


def _strikes(pointer: Callout, name: Callout) -> bool:
    """Whether a pointer on its way to its own row goes through a name in a row nearer to the line."""
    reaches = pointer.row if pointer.anchor == "middle" else pointer.row + 1
    return name.row < reaches and name.left - 3 < pointer.x < name.right + 3

"""Near names: which of the allowed words somebody may have meant."""

from __future__ import annotations

from collections.abc import Iterable


def nearest(word: str, allowed: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """The allowed words that a slip of the keyboard turns into ``word``, nearest first, at most ``most``.

    Near means a distance of a third of the longer word at most (but 1 for words of two and three letters),
    counted in letters added, left out, changed or swapped with their neighbour (optimal string alignment
    distance: Damerau 1964). Case, and a hyphen for an underscore or space, count for nothing. Equal distances
    are given in alphabetical order.
    """
    meant = _flat(word)
    found: list[tuple[int, str]] = []
    for candidate in set(allowed):
        flat = _flat(candidate)
        limit = max(1, max(len(meant), len(flat)) // 3)
        if abs(len(meant) - len(flat)) > limit:
            continue
        away = _distance(meant, flat, limit)
        if away <= limit and away < max(len(meant), len(flat)):
            found.append((away, candidate))
    return tuple(candidate for _, candidate in sorted(found)[:most])


def choice_of(names: Iterable[str]) -> str:
    """How a cure offers names, without its full stop: ``Write `a``` where there is one, else ``Use one of …``."""
    shown = [f"`{name}`" for name in names]
    return f"Write {shown[0]}" if len(shown) == 1 else f"Use one of {', '.join(shown)}"


def _flat(word: str) -> str:
    return word.casefold().replace("_", "-").replace(" ", "-")[:80]


def _distance(one: str, other: str, limit: int) -> int:
    """The distance, or any number above ``limit`` once it is certain to be above."""
    before: list[int] = []
    previous = list(range(len(other) + 1))
    for row, letter in enumerate(one, start=1):
        current = [row]
        for column, facing in enumerate(other, start=1):
            cost = min(
                previous[column] + 1, current[column - 1] + 1, previous[column - 1] + (letter != facing)
            )
            if row > 1 and column > 1 and letter == other[column - 2] and one[row - 2] == facing:
                cost = min(cost, before[column - 2] + 1)
            current.append(cost)
        if min(current) > limit and min(previous) > limit:
            return limit + 1
        before, previous = previous, current
    return previous[-1]

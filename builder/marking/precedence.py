"""What it means that one step comes before another: closure, broken pairs, and the fewest steps to move.

``moves`` rests on two classical theorems. The steps that may stay where they are form a set without a broken
pair; broken pairs are themselves a partial order (the rules intersected with the reversed answer), so the
largest such set is its widest antichain. By Dilworth (A decomposition theorem for partially ordered sets,
Annals of Mathematics 51, 1950, 161-166) its size is the least number of chains, which is n less a maximum
matching of the broken pairs (Fulkerson, Proc. Amer. Math. Soc. 7, 1956, 701-702). Both citations from memory;
the tests compare with every right order by brute force. What has to move is therefore the size of that
matching.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

Pair = tuple[str, str]


class Circle(ValueError):  # noqa: N818 - it says what was found
    """The rules go round in a circle, so that no order keeps them all."""

    def __init__(self, steps: tuple[str, ...]) -> None:
        """Keep the steps of one circle, in order."""
        self.steps = steps
        super().__init__(" -> ".join((*steps, steps[0])))


def closure(steps: Sequence[str], pairs: Iterable[Pair]) -> list[Pair]:
    """Return every pair that follows from ``pairs``, sorted by the order of ``steps``.

    Raises Circle where a step would have to come before itself.
    """
    direct: dict[str, list[str]] = {step: [] for step in steps}
    for first, then in pairs:
        direct[first].append(then)
    after: dict[str, set[str]] = {}

    def visit(step: str, trail: tuple[str, ...]) -> set[str]:
        if step in trail:
            raise Circle(trail[trail.index(step) :])
        if step not in after:
            found: set[str] = set()
            for then in direct[step]:
                found |= {then} | visit(then, (*trail, step))
            after[step] = found
        return after[step]

    for step in steps:
        visit(step, ())
    return [(first, then) for first in steps for then in steps if then in after[first]]


def broken_pairs(before: Iterable[Sequence[str]], answer: Sequence[str]) -> list[Pair]:
    """Return the pairs of ``before`` that ``answer`` reverses, in the order of ``before``."""
    position = {step: index for index, step in enumerate(answer)}
    return [(first, then) for first, then in before if position[first] > position[then]]


def fewest_moves(broken: Iterable[Pair]) -> int:
    """Return how many steps must be taken out and put elsewhere to mend all of ``broken``.

    ``broken`` holds every reversed pair of a transitive relation. A maximum bipartite matching by augmenting
    paths.
    """
    follows: dict[str, list[str]] = {}
    for first, then in broken:
        follows.setdefault(first, []).append(then)
    partner: dict[str, str] = {}

    def augment(first: str, tried: set[str]) -> bool:
        for then in follows[first]:
            if then not in tried:
                tried.add(then)
                if then not in partner or augment(partner[then], tried):
                    partner[then] = first
                    return True
        return False

    return sum(augment(first, set()) for first in follows)

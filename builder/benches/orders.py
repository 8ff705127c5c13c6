"""Steps of which some wait for others: who waits for whom, which step may come now, and how many orders are right.

A right order is a linear extension of the partial order that the rules make. Their number is found exactly: the
number of right orders of a set of steps is the sum, over the steps in it that wait for nothing in it, of the number
for the set without that step; sets that do not touch each other are counted apart and then interleaved
(Brightwell and Winkler, Counting linear extensions, Order 8, 1991, 225-242, show that no way is fast in general;
from memory). Twenty steps are the most that a bench has.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from math import comb
from typing import Any

Pair = tuple[str, str]


def earlier(steps: Sequence[str], pairs: Iterable[Pair]) -> dict[str, frozenset[str]]:
    """Each step with everything that must come before it, directly or not.

    ``pairs`` name only ``steps`` and do not run in a circle.
    """
    direct: dict[str, list[str]] = {step: [] for step in steps}
    for first, then in pairs:
        direct[then].append(first)
    found: dict[str, frozenset[str]] = {}

    def of(step: str) -> frozenset[str]:
        if step not in found:
            found[step] = frozenset(direct[step]).union(*(of(first) for first in direct[step]))
        return found[step]

    return {step: of(step) for step in steps}


def layers(steps: Sequence[str], pairs: Iterable[Pair]) -> dict[str, int]:
    """For each step the length of the longest row of steps that must come before it."""
    before = earlier(steps, pairs)
    found: dict[str, int] = {}
    for step in sorted(steps, key=lambda each: len(before[each])):
        found[step] = 1 + max((found[first] for first in before[step]), default=-1)
    return found


def one_right_order(steps: Sequence[str], pairs: Iterable[Pair]) -> list[str]:
    """The right order that keeps closest to the order of ``steps``: always the first that may come."""
    before = earlier(steps, pairs)
    left = list(steps)
    done: list[str] = []
    while left:
        step = next(each for each in left if before[each] <= set(done))
        left.remove(step)
        done.append(step)
    return done


def count_right_orders(steps: Sequence[str], pairs: Iterable[Pair]) -> int:
    """How many orders keep every rule."""
    before = earlier(steps, pairs)
    place = {step: index for index, step in enumerate(steps)}
    waits = [sum(1 << place[first] for first in before[step]) for step in steps]
    near = [
        waits[index] | sum(1 << other for other in range(len(steps)) if waits[other] >> index & 1)
        for index in range(len(steps))
    ]

    def touching(whole: int, start: int) -> int:
        """The steps of ``whole`` that ``start`` is bound to, through any number of others."""
        found = fresh = start
        while fresh:
            reached = 0
            for index in range(len(steps)):
                if fresh >> index & 1:
                    reached |= near[index]
            fresh = reached & whole & ~found
            found |= fresh
        return found

    @cache
    def count(whole: int) -> int:
        if whole & (whole - 1) == 0:
            return 1
        part = touching(whole, whole & -whole)
        if part != whole:
            ways = comb(whole.bit_count(), part.bit_count())
            return ways * count(part) * count(whole & ~part)
        return sum(
            count(whole & ~(1 << index))
            for index in range(len(steps))
            if whole >> index & 1 and not waits[index] & whole
        )

    return count((1 << len(steps)) - 1)


def refused(key: Mapping[str, Any], done: Sequence[str], step: str) -> dict[str, Any]:
    """What keeps ``step`` from coming next; both lists are empty where it may.

    ``key`` is ``{"steps": [ids], "before": [[first, then], …], "rules": [{"first", "then": [ids], "critical"}]}``,
    ``before`` being everything that follows from the rules. Gives ``{"waits": [steps that must come before, in the
    order of the key], "rules": [indexes of the rules that would be broken, critical ones first]}``. Twin of
    ``pure/assembly.js``.
    """
    there = set(done)
    missing = {first for first, then in key["before"] if then == step and first not in there}
    broken = [
        index
        for index, rule in enumerate(key["rules"])
        if step in rule["then"] and rule["first"] not in there
    ]
    return {
        "waits": [each for each in key["steps"] if each in missing],
        "rules": sorted(broken, key=lambda index: not key["rules"][index]["critical"]),
    }

"""Steps to put in order: marked against what must come before what, never against one listed order.

A random order reverses each pair half of the time, so the mark is max(0, 1 - 2 * broken / all pairs):
guessing expects nothing before the floor. A broken critical pair makes the mark 0.
"""

from __future__ import annotations

from journeybook.content.model import Course, OrderQuestion
from journeybook.marking.kind import (
    Json,
    Key,
    Kind,
    Marked,
    distinct_texts,
    malformed,
    thousandths,
    unanswered,
)
from journeybook.marking.precedence import Pair, broken_pairs, closure, fewest_moves


def lower(question: OrderQuestion, course: Course) -> dict[str, Json]:  # noqa: ARG001 - Kind.lower
    """Return ``{"kind", "steps", "before", "critical"}``; raise ``precedence.Circle`` where rules circle.

    ``critical`` holds the pairs as the author stated them. Their closure adds nothing: an order that breaks a
    pair which only follows from critical pairs breaks one of those too.
    """
    steps = [step.id for step in question.steps]
    place = {step: index for index, step in enumerate(steps)}
    stated = {(rule.first, then) for rule in question.rules for then in rule.then}
    critical = {(rule.first, then) for rule in question.rules if rule.critical for then in rule.then}
    return {
        "kind": "order",
        "steps": list(steps),
        "before": listed(closure(steps, stated)),
        "critical": listed(sorted(critical, key=lambda pair: (place[pair[0]], place[pair[1]]))),
    }


def listed(pairs: list[Pair]) -> list[Json]:
    """Return pairs as JSON holds them."""
    return [list(pair) for pair in pairs]


def mark(key: Key, variant: int, answer: object) -> Marked:  # noqa: ARG001 - Kind.mark
    """Mark a list of all step ids."""
    if answer is None:
        return unanswered("order")
    ordered = distinct_texts(answer, key["steps"])
    if ordered is None or len(ordered) != len(key["steps"]):
        return malformed("order")
    before: list[list[str]] = key["before"]
    broken = broken_pairs(before, ordered)
    critical = broken_pairs(key["critical"], ordered)
    kept = max(0, len(before) - 2 * len(broken))
    earned = 0 if critical else thousandths(kept, len(before))
    return Marked(
        earned,
        {
            "kind": "order",
            "broken": listed(broken),
            "critical": listed(critical),
            "moves": fewest_moves(broken),
        },
    )


KIND = Kind(name="order", lower=lower, mark=mark, arranged="steps")

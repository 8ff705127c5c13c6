"""Items that each have one partner: the share of right pairs.

Left-over answers keep the last pair from being given away by the others.
"""

from __future__ import annotations

from journeybook.content.model import Course, MatchQuestion
from journeybook.marking.kind import Json, Key, Kind, Marked, malformed, thousandths, unanswered


def lower(question: MatchQuestion, course: Course) -> dict[str, Json]:  # noqa: ARG001 - Kind.lower
    """Return ``{"kind", "items", "answers", "pairs"}``."""
    return {
        "kind": "match",
        "items": [item.id for item in question.items],
        "answers": [answer.id for answer in question.answers],
        "pairs": {item.id: item.goes_with for item in question.items},
    }


def mark(key: Key, variant: int, answer: object) -> Marked:  # noqa: ARG001 - Kind.mark
    """Mark a mapping of item ids to answer ids; items may be left out, no answer may serve twice."""
    if answer is None:
        return unanswered("match")
    pairs: dict[str, str] = key["pairs"]
    if not isinstance(answer, dict) or not answer.keys() <= pairs.keys():
        return malformed("match")
    given = list(answer.values())
    if not all(isinstance(each, str) and each in key["answers"] for each in given):
        return malformed("match")
    if len(set(given)) != len(given):
        return malformed("match")
    items: list[str] = key["items"]
    wrong: list[Json] = [item for item in items if answer.get(item) != pairs[item]]
    return Marked(thousandths(len(items) - len(wrong), len(items)), {"kind": "match", "wrong": wrong})


KIND = Kind(name="match", lower=lower, mark=mark, arranged="answers")

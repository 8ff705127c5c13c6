"""A way through a drill: what its end is worth, less what was done wrong on the way.

A critical error earns nothing, and in a check it fails the check. That an end has a value and the way to it penalties
is common for situations that branch; which numbers, and that nothing goes below 0, is ours.
"""

from __future__ import annotations

from typing import Any

from journeybook.content.model import Course, DrillQuestion
from journeybook.marking.kind import Json, Key, Kind, Marked, malformed, unanswered


def lower(question: DrillQuestion, course: Course) -> dict[str, Json]:
    """Return ``{"kind", "start", "moments", "ends", "deeds"}``.

    ``moments`` are ``{id: {deed: {"to", "penalty"} or {"critical": true}}}``, ``ends`` ``{id: marks}``.
    """
    drill = course.drills[question.drill]
    moments: dict[str, Json] = {}
    ends: dict[str, Json] = {}
    for moment in drill.moments:
        if moment.worth is not None:
            ends[moment.id] = moment.worth
        else:
            moments[moment.id] = {
                deed.id: {"critical": True}
                if deed.critical
                else {"to": deed.leads_to, "penalty": deed.penalty}
                for deed in moment.deeds
            }
    return {
        "kind": "drill",
        "start": drill.start,
        "moments": moments,
        "ends": ends,
        "deeds": [deed.id for deed in drill.deeds],
    }


def mark(key: Key, variant: int, answer: object) -> Marked:  # noqa: ARG001 - Kind.mark
    """Mark the ids of the deeds that were done, in their order.

    Every deed must have been possible where it was done. A way that stops before an end earns nothing.
    """
    if answer is None:
        return unanswered("drill")
    if not isinstance(answer, list) or len(answer) > len(key["moments"]):
        return malformed("drill")
    here: str = key["start"]
    penalty = 0
    for index, deed in enumerate(answer):
        possible: dict[str, Any] = key["moments"].get(here, {})
        if not isinstance(deed, str) or deed not in possible:
            return malformed("drill")
        done = possible[deed]
        if "critical" in done:
            return Marked(0, _remarks(critical=deed)) if index == len(answer) - 1 else malformed("drill")
        penalty += done["penalty"]
        here = done["to"]
    if here not in key["ends"]:
        return Marked(0, {"kind": "drill", "problem": "unfinished"})
    return Marked(max(0, key["ends"][here] - penalty), _remarks(end=here, penalty=penalty))


def _remarks(*, critical: str = "", end: str = "", penalty: int = 0) -> dict[str, Json]:
    return {"kind": "drill", "critical": critical, "end": end, "penalty": penalty}


KIND = Kind(name="drill", lower=lower, mark=mark, arranged="deeds")

"""One right part of a drawing: all or nothing, however it was chosen."""

from __future__ import annotations

from journeybook.content.model import Course
from journeybook.content.model.hands_on import SpotQuestion
from journeybook.marking.kind import WEIGHT, Json, Key, Kind, Marked, malformed, unanswered


def lower(question: SpotQuestion, course: Course) -> dict[str, Json]:  # noqa: ARG001 - Kind.lower
    """Return ``{"kind", "spots", "right"}``."""
    return {"kind": "spot", "spots": [spot.id for spot in question.spots], "right": question.right}


def mark(key: Key, variant: int, answer: object) -> Marked:  # noqa: ARG001 - Kind.mark
    """Mark the id of one spot."""
    if answer is None:
        return unanswered("spot")
    if not isinstance(answer, str) or answer not in key["spots"]:
        return malformed("spot")
    return Marked(WEIGHT if answer == key["right"] else 0, {"kind": "spot"})


KIND = Kind(name="spot", lower=lower, mark=mark, arranged="spots")

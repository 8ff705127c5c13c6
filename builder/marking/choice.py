"""One right answer among options: all or nothing.

There is no penalty for guessing; what guessing is worth belongs to the pass mark, not to the question.
"""

from __future__ import annotations

from journeybook.content.model import ChoiceQuestion, Course
from journeybook.marking.kind import WEIGHT, Json, Key, Kind, Marked, malformed, unanswered


def lower(question: ChoiceQuestion, course: Course) -> dict[str, Json]:  # noqa: ARG001 - Kind.lower
    """Return ``{"kind", "options", "right"}``."""
    return {
        "kind": "choice",
        "options": [option.id for option in question.options],
        "right": question.right,
    }


def mark(key: Key, variant: int, answer: object) -> Marked:  # noqa: ARG001 - Kind.mark
    """Mark the id of one option."""
    if answer is None:
        return unanswered("choice")
    if not isinstance(answer, str) or answer not in key["options"]:
        return malformed("choice")
    return Marked(WEIGHT if answer == key["right"] else 0, {"kind": "choice"})


KIND = Kind(name="choice", lower=lower, mark=mark, arranged="options")

"""How a question of the course becomes a marking key: plain data that holds everything marking needs."""

from __future__ import annotations

from journeybook.content.model import Course, Question
from journeybook.marking.kind import Json
from journeybook.marking.kinds import KINDS


def lower(question: Question, course: Course) -> dict[str, Json]:
    """Return the key of ``question``; DEVELOPERS.md gives its shape for each kind.

    ``course`` supplies the values of the kit sheet and of the profile. Raises ValueError
    (``precedence.Circle``, ``number.NoKey``) for a question that the loader would have refused.
    """
    return KINDS[question.kind].lower(question, course)

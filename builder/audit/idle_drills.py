"""A020: every drill is asked for by a question; there is no other way to it."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.model import Course, DrillQuestion
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def find_idle_drills(course: Course) -> Iterator[Problem]:
    """Files in drills/ that no question names."""
    asked = {question.drill for question in course.questions.values() if isinstance(question, DrillQuestion)}
    for drill in course.drills.values():
        if drill.id not in asked:
            yield warning(
                "A020",
                drill.place,
                f"No question asks for the drill {drill.id}.",
                f"Add a question of `kind: drill` with `drill: {drill.id}`, or take the file out.",
            )

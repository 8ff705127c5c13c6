"""A002: every outcome can be practised."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.model import Course, Use
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def find_outcomes_not_practised(course: Course) -> Iterator[Problem]:
    """Outcomes without a practice question that some lesson asks."""
    asked = {name for lesson in course.lessons for name in lesson.practice}
    practised = {
        question.outcome
        for question in course.questions.values()
        if question.use is Use.PRACTICE and question.id in asked
    }
    for outcome in course.outcomes:
        if outcome.id not in practised:
            yield warning(
                "A002",
                outcome.place,
                f"No lesson asks a practice question for the outcome {outcome.id}.",
                "Add one with `use: practice` and name it under `practice` of the lesson that teaches it.",
            )

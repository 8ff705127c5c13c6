"""A001: every outcome is taught by a lesson."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.model import Course
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def find_outcomes_not_taught(course: Course) -> Iterator[Problem]:
    """Outcomes that no lesson names."""
    taught = {name for lesson in course.lessons for name in lesson.outcomes}
    for outcome in course.outcomes:
        if outcome.id not in taught:
            yield warning(
                "A001",
                outcome.place,
                f"No lesson teaches the outcome {outcome.id}.",
                f"Name `{outcome.id}` under `outcomes` of the lesson that teaches it, or write one.",
            )

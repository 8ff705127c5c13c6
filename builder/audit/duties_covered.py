"""A014, A015: every duty is taught, and asked or observed."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.model import Course
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def find_duties_hardly_covered(course: Course) -> Iterator[Problem]:
    """Duties without a lesson, and duties without a question or a step of a practical."""
    for duty in course.duties.duties if course.duties else ():
        by = duty.covered_by
        if not by.lessons:
            yield warning(
                "A014",
                duty.place,
                f"No lesson teaches what the duty {duty.id} asks.",
                "Name the lesson that does under `lessons`, or write one.",
            )
        if not by.questions and not by.practicals:
            yield warning(
                "A015",
                duty.place,
                f"Whether the duty {duty.id} is met is neither asked nor observed.",
                "Name a question under `questions`, or a step under `practicals`.",
            )

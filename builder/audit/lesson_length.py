"""A004: a lesson fits into one sitting.

The limit of twelve minutes is common practice; there is no single source.
"""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.model import Course
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem

MOST_MINUTES = 12


def find_long_lessons(course: Course) -> Iterator[Problem]:
    """Lessons over twelve minutes."""
    for lesson in course.lessons:
        if lesson.minutes > MOST_MINUTES:
            yield warning(
                "A004",
                lesson.place,
                f"The lesson takes {lesson.minutes} minutes; more than {MOST_MINUTES} are seldom read to "
                "the end.",
                "Split it into two lessons.",
            )

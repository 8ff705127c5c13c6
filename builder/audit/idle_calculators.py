"""A018: every calculator stands in a lesson; there is no other way to it."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.model import BlockKind, Course
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def find_idle_calculators(course: Course) -> Iterator[Problem]:
    """Files in calculators/ that no lesson names."""
    shown = {
        block.text for lesson in course.lessons for block in lesson.body if block.kind is BlockKind.CALCULATOR
    }
    for calculator in course.calculators.values():
        if calculator.id not in shown:
            yield warning(
                "A018",
                calculator.place,
                f"No lesson shows the calculator {calculator.id}.",
                f"Add the block `- calculator: {calculator.id}` to a lesson, or take the file out.",
            )

"""A003: every outcome is drawn by the check."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.model import Course
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def find_outcomes_not_checked(course: Course) -> Iterator[Problem]:
    """Outcomes without a cell in the blueprint; nothing where the course has no check."""
    if course.check is None:
        return
    checked = {cell.outcome for cell in course.check.cells}
    for outcome in course.outcomes:
        if outcome.id not in checked:
            yield warning(
                "A003",
                outcome.place,
                f"The check draws no question for the outcome {outcome.id}.",
                "Add a cell for it to competence-check.yml.",
                (course.check.place,),
            )

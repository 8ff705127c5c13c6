"""A019: every bench stands in a lesson or above a question, is read off, or gives a line of a chart."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.model import BlockKind, Course, NumberQuestion
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def find_idle_benches(course: Course) -> Iterator[Problem]:
    """Files in benches/ that nothing uses."""
    used = {block.text for lesson in course.lessons for block in lesson.body if block.kind is BlockKind.BENCH}
    for question in course.questions.values():
        if question.trial is not None:
            used.add(question.trial.bench)
        if isinstance(question, NumberQuestion):
            used.update(reading.bench for reading in question.reads.values())
    for figure in course.figures.values():
        used.update(figure.drawn_from)
    for bench in course.benches.values():
        if bench.id not in used:
            yield warning(
                "A019",
                bench.place,
                f"Nothing shows the bench {bench.id}.",
                f"Add the block `- bench: {bench.id}` to a lesson, name it in the `trial` of a question, or take the "
                "file out.",
            )

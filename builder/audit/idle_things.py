"""A021: every figure, calculator, bench, drill and question is shown or asked somewhere.

Words stand in the glossary, job cards, practicals and duties on pages of their own: those are shown without being
named. Sources have a rule of their own (A008).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Protocol

from journeybook.content.model import (
    BlockKind,
    CardBlockKind,
    Course,
    DrillQuestion,
    NumberQuestion,
    Question,
    TriageQuestion,
    Use,
)
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Place, Problem


class _Thing(Protocol):
    @property
    def id(self) -> str:
        """Its name."""

    @property
    def place(self) -> Place:
        """Where it stands."""


def find_idle_things(course: Course) -> Iterator[Problem]:
    """Whatever nobody who goes through the course ever comes to."""
    yield from _idle(
        "figure",
        course.figures,
        _shown_figures(course),
        "Add the block `- figure: {id}` to a lesson, name it under `figure` of a question, a drill or a word, or take "
        "its files out.",
    )
    yield from _idle(
        "calculator",
        course.calculators,
        _blocks(course, BlockKind.CALCULATOR),
        "Add the block `- calculator: {id}` to a lesson, or take the file out.",
    )
    yield from _idle(
        "bench",
        course.benches,
        _used_benches(course),
        "Add the block `- bench: {id}` to a lesson, name it in the `trial` of a question, or take the file out.",
    )
    yield from _idle(
        "drill",
        course.drills,
        {one.drill for one in _written(course) if isinstance(one, DrillQuestion)},
        "Add a question of `kind: drill` with `drill: {id}`, or take the file out.",
    )
    yield from _idle_questions(course)


def _idle(noun: str, things: Mapping[str, _Thing], used: Iterable[str], mend: str) -> Iterator[Problem]:
    names = set(used)
    for thing in things.values():
        if thing.id not in names:
            verb = "asks for" if noun == "drill" else "shows"
            yield warning(
                "A021", thing.place, f"Nothing {verb} the {noun} {thing.id}.", mend.format(id=thing.id)
            )


def _idle_questions(course: Course) -> Iterator[Problem]:
    named = {name for lesson in course.lessons for name in lesson.practice}
    cells = {(cell.outcome, cell.level) for cell in course.check.cells} if course.check else set()
    for question in course.questions.values():
        if question.use is Use.PRACTICE:
            if question.id not in named:
                yield warning(
                    "A021",
                    question.place,
                    f"No lesson asks the practice question {question.id}.",
                    "Name it under `practice` of a lesson, or take it out, or give it `retired:` with a date.",
                )
        elif (
            course.check is not None
            and not question.critical
            and (question.outcome, question.level) not in cells
        ):
            yield warning(
                "A021",
                question.place,
                f"No cell of the check draws the question {question.id} ({question.outcome}, {question.level}).",
                f"Add `{{outcome: {question.outcome}, level: {question.level}, draw: 1}}` to its cells, or write "
                "`use: practice` and name it in a lesson.",
            )


def _written(course: Course) -> Iterator[Question]:
    """Every question, also one that is retired: what it names has to stay with it."""
    for bank in course.banks:
        yield from bank.questions


def _blocks(course: Course, kind: BlockKind) -> set[str]:
    return {block.text for lesson in course.lessons for block in lesson.body if block.kind is kind}


def _shown_figures(course: Course) -> set[str]:
    shown = _blocks(course, BlockKind.FIGURE)
    for card in course.job_cards.values():
        shown.update(part.text for part in card.body if part.kind is CardBlockKind.FIGURE)
    shown.update(drill.figure for drill in course.drills.values())
    shown.update(term.figure for term in course.terms.values())
    for question in _written(course):
        shown.add(question.figure)
        if isinstance(question, TriageQuestion):
            shown.update(unit.figure for unit in question.units)
    return shown


def _used_benches(course: Course) -> set[str]:
    used = _blocks(course, BlockKind.BENCH)
    for question in _written(course):
        if question.trial is not None:
            used.add(question.trial.bench)
        if isinstance(question, NumberQuestion):
            used.update(reading.bench for reading in question.reads.values())
    for figure in course.figures.values():
        used.update(figure.drawn_from)
    return used

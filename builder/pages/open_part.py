"""What of a course may stand in a site: all of it, or with a sealed check everything but what the check asks.

Taken away are the questions of the check, retired ones too, and the figures, benches and drills that they alone use.
Every page and file is made of what is left, so that nothing can slip through one of them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import TypeVar

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

Thing = TypeVar("Thing")


@dataclass(frozen=True, kw_only=True)
class Used:
    """Ids of what questions show and work with."""

    figures: frozenset[str]
    benches: frozenset[str]
    drills: frozenset[str]


def open_part(course: Course) -> Course:
    """Return the course as its site may show it; the very same one where its check is not sealed."""
    if course.check is None or not course.check.sealed:
        return course
    written = [question for bank in course.banks for question in bank.questions]
    asked = used_by(course, (one for one in written if one.use is Use.CHECK))
    others = used_by(course, (one for one in written if one.use is not Use.CHECK))
    drills = _without(course.drills, asked.drills - others.drills)
    elsewhere = others.figures | _figures_elsewhere(course) | {drill.figure for drill in drills.values()}
    figures = _without(course.figures, asked.figures - elsewhere)
    benches = asked.benches - others.benches - _benches_in_lessons(course)
    drawn = {bench for figure in figures.values() for bench in figure.drawn_from}
    return replace(
        course,
        banks=tuple(
            replace(bank, questions=tuple(one for one in bank.questions if one.use is not Use.CHECK))
            for bank in course.banks
        ),
        drills=drills,
        figures=figures,
        benches=_without(course.benches, benches - drawn),
    )


def used_by(course: Course, questions: Iterable[Question]) -> Used:
    """Return what the questions use."""
    figures: set[str] = set()
    benches: set[str] = set()
    drills: set[str] = set()
    for question in questions:
        figures.add(question.figure)
        if question.trial is not None:
            benches.add(question.trial.bench)
        if isinstance(question, TriageQuestion):
            figures.update(unit.figure for unit in question.units)
        if isinstance(question, NumberQuestion):
            benches.update(reading.bench for reading in question.reads.values())
        if isinstance(question, DrillQuestion):
            drills.add(question.drill)
            figures.add(course.drills[question.drill].figure)
    return Used(figures=frozenset(figures), benches=frozenset(benches), drills=frozenset(drills))


def _figures_elsewhere(course: Course) -> set[str]:
    shown = {
        block.text for lesson in course.lessons for block in lesson.body if block.kind is BlockKind.FIGURE
    }
    for card in course.job_cards.values():
        shown.update(part.text for part in card.body if part.kind is CardBlockKind.FIGURE)
    shown.update(term.figure for term in course.terms.values())
    return shown


def _benches_in_lessons(course: Course) -> set[str]:
    return {block.text for lesson in course.lessons for block in lesson.body if block.kind is BlockKind.BENCH}


def _without(things: Mapping[str, Thing], names: Iterable[str]) -> dict[str, Thing]:
    gone = set(names)
    return {name: thing for name, thing in things.items() if name not in gone}

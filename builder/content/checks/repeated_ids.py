"""Ids that must be told apart: those of a course, and those within one question."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from journeybook.content.file_read import FileRead
from journeybook.content.gathered import Gathered
from journeybook.content.model import (
    Citation,
    CriticalFact,
    Duties,
    Lesson,
    Outcome,
    PracticalStep,
    Question,
    Term,
    TriageQuestion,
    Value,
)
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem


def check_ids_of_the_course(got: Gathered) -> Iterator[Problem]:
    """Outcomes, facts, sources, words, lessons and questions have each id once in the whole course."""
    yield from _repeats(got, got.every(Outcome), "outcome")
    yield from _repeats(got, got.every(CriticalFact), "critical fact")
    yield from _repeats(got, got.every(Citation), "source")
    yield from _repeats(got, got.every(Term), "word")
    yield from _repeats(got, got.every(Lesson), "lesson")
    yield from _repeats(got, got.every(Question), "question")
    yield from _repeats(got, got.every(PracticalStep), "practical step")
    for list_of_duties in got.every(Duties):
        yield from _repeats(got, list_of_duties.duties, "duty")
    by_file: dict[str, list[Value]] = {}
    for value in got.every(Value):
        by_file.setdefault(value.place.file, []).append(value)
    for values in by_file.values():
        yield from _repeats(got, values, "value")
    for source in got.every(Citation):
        if source.id == "kit":
            yield fault(
                "K001",
                got.place(source, "id"),
                "The id `kit` always means the kit sheet.",
                "Give this source another id, such as `maker-manual`.",
            )


def check_ids_within_questions(file: FileRead) -> Iterator[Problem]:
    """Options, steps, items and answers have each id once in their question."""
    for question in file.every(Question):
        yield from _repeats(file, question.partnered, "item")
        yield from _repeats(file, question.offered, question.offers.removesuffix("s"))
    for triage in file.every(TriageQuestion):
        yield from _repeats(file, triage.places, "place")


def _repeats(got: Gathered | FileRead, things: Sequence[Any], noun: str) -> Iterator[Problem]:
    if len({thing.id for thing in things}) == len(things):
        return  # The rule; looking for the first of each id takes several times as long.
    plural = noun.removesuffix("y") + "ies" if noun.endswith("y") else f"{noun}s"
    seen: dict[str, object] = {}
    for thing in things:
        name = thing.id
        first = seen.setdefault(name, thing)
        if first is not thing:
            yield fault(
                "C016",
                got.place(thing, "id"),
                f"There are two {plural} with the id `{name}`.",
                "Give one of them another id; ids that learners' records name already must stay.",
                (got.place(first, "id"),),
            )

"""Names in fields that must be there: outcomes, sources, critical facts, figures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journeybook.content.gathered import Gathered, Naming
from journeybook.content.model import Cell, CriticalFact, Lesson, Question, Term, Value
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem

_WHERE_TO_ADD = {
    Naming.OUTCOME: ("C031", "to the outcomes in course.yml"),
    Naming.SOURCE: ("C032", "to sources.yml"),
    Naming.FACT: ("C033", "to the critical facts in course.yml"),
    Naming.FIGURE: ("C034", "to figures/, as NAME.yml with NAME.svg"),
}


def check_references(got: Gathered) -> Iterator[Problem]:
    """Every name in a field names something."""
    for lesson in got.every(Lesson):
        yield from _missing(got, lesson, "outcomes", Naming.OUTCOME, lesson.outcomes)
        yield from _missing(got, lesson, "source", Naming.SOURCE, lesson.sources)
        for block in lesson.body:
            if block.kind == "figure":
                yield from _missing(got, block, "figure", Naming.FIGURE, (block.text,))
    for question in got.every(Question):
        yield from _missing(got, question, "outcome", Naming.OUTCOME, (question.outcome,))
        yield from _missing(got, question, "source", Naming.SOURCE, question.sources)
        if question.critical:
            yield from _missing(got, question, "critical", Naming.FACT, (question.critical,))
        if question.figure:
            yield from _missing(got, question, "figure", Naming.FIGURE, (question.figure,))
    for term in got.every(Term):
        if term.figure:
            yield from _missing(got, term, "figure", Naming.FIGURE, (term.figure,))
    for value in got.every(Value):
        yield from _missing(got, value, "source", Naming.SOURCE, value.sources)
    for fact in got.every(CriticalFact):
        yield from _missing(got, fact, "source", Naming.SOURCE, fact.sources)
    for cell in got.every(Cell):
        yield from _missing(got, cell, "outcome", Naming.OUTCOME, (cell.outcome,))
    if got.course is not None:
        yield from _missing(got, got.course.validity, "source", Naming.SOURCE, got.course.validity.sources)


def _missing(
    got: Gathered, thing: object, key: str, naming: Naming, names: Sequence[str]
) -> Iterator[Problem]:
    for index, name in got.missing(naming, names):
        yield unknown_name(got, naming, name, got.place(thing, key, index))


def unknown_name(got: Gathered, naming: Naming, name: str, place: Place) -> Problem:
    """The problem of a name in a field that names nothing."""
    code, where = _WHERE_TO_ADD[naming]
    return fault(
        code,
        place,
        f"There is no {naming} called `{name}`.",
        f"{got.names[naming].hint(name)} `{name}` {where}.",
    )

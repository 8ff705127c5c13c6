"""Names in fields that must be there: outcomes, sources, critical facts, figures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journeybook.content.file_read import FileRead
from journeybook.content.formats.plan_files import BenchLineFile
from journeybook.content.gathered import Gathered, Naming
from journeybook.content.model import (
    Bench,
    BenchReading,
    Calculator,
    Cell,
    CriticalFact,
    Drill,
    DrillQuestion,
    Duty,
    JobCard,
    Lesson,
    PracticalStep,
    Question,
    Term,
    TriageQuestion,
    Trial,
    Validity,
    Value,
)
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem

_WHERE_TO_ADD = {
    Naming.OUTCOME: ("C031", "to the outcomes in course.yml"),
    Naming.SOURCE: ("C032", "to sources.yml"),
    Naming.FACT: ("C033", "to the critical facts in course.yml"),
    Naming.FIGURE: ("C034", "to figures/, as NAME.yml with NAME.svg or `draw`"),
    Naming.BENCH: ("N010", "to benches/, as NAME.yml"),
    Naming.DRILL: ("D010", "to drills/, as NAME.yml"),
    Naming.CALCULATOR: ("E001", "to calculators/, as NAME.yml"),
}


def check_references(got: Gathered) -> Iterator[Problem]:
    """Every name in a field names something."""
    for file in got.files:
        if got.lacks_any(file.worked_out(_all_named, None)):
            for thing, key, naming, names in _naming(file):
                for index, name in got.missing(naming, names):
                    yield unknown_name(got, naming, name, file.place(thing, key, index))


def _all_named(file: FileRead, _: None) -> frozenset[tuple[Naming, str]]:
    return frozenset([(naming, name) for _, _, naming, names in _naming(file) for name in names])


def _naming(file: FileRead) -> Iterator[tuple[object, str, Naming, Sequence[str]]]:
    """Each field that names something: the object, the key, what is named, and the names."""
    for lesson in file.every(Lesson):
        yield lesson, "outcomes", Naming.OUTCOME, lesson.outcomes
        yield lesson, "source", Naming.SOURCE, lesson.sources
        for block in lesson.body:
            if block.kind == "figure":
                yield block, "figure", Naming.FIGURE, (block.text,)
            if block.kind == "calculator":
                yield block, "calculator", Naming.CALCULATOR, (block.text,)
            elif block.kind == "bench":
                yield block, "bench", Naming.BENCH, (block.text,)
    for bench in file.every(Bench):
        yield bench, "source", Naming.SOURCE, bench.sources
    for line in file.every(BenchLineFile):
        yield line, "bench", Naming.BENCH, (line.bench,)
    for trial in file.every(Trial):
        yield trial, "bench", Naming.BENCH, (trial.bench,)
    for reading in file.every(BenchReading):
        yield reading, "bench", Naming.BENCH, (reading.bench,)
    for question in file.every(Question):
        yield question, "outcome", Naming.OUTCOME, (question.outcome,)
        yield question, "source", Naming.SOURCE, question.sources
        if question.critical:
            yield question, "critical", Naming.FACT, (question.critical,)
        if question.figure:
            yield question, "figure", Naming.FIGURE, (question.figure,)
        if isinstance(question, TriageQuestion):
            for unit in question.units:
                if unit.figure:
                    yield unit, "figure", Naming.FIGURE, (unit.figure,)
        if isinstance(question, DrillQuestion):
            yield question, "drill", Naming.DRILL, (question.drill,)
    for calculator in file.every(Calculator):
        yield calculator, "source", Naming.SOURCE, calculator.sources
    for drill in file.every(Drill):
        yield drill, "source", Naming.SOURCE, drill.sources
        if drill.figure:
            yield drill, "figure", Naming.FIGURE, (drill.figure,)
    for step in file.every(PracticalStep):
        yield step, "outcome", Naming.OUTCOME, (step.outcome,)
        yield step, "source", Naming.SOURCE, step.sources
    for card in file.every(JobCard):
        yield card, "source", Naming.SOURCE, card.sources
        for part in card.body:
            if part.kind == "figure":
                yield part, "figure", Naming.FIGURE, (part.text,)
    for duty in file.every(Duty):
        yield duty, "source", Naming.SOURCE, duty.sources
    for term in file.every(Term):
        if term.figure:
            yield term, "figure", Naming.FIGURE, (term.figure,)
    for value in file.every(Value):
        yield value, "source", Naming.SOURCE, value.sources
    for fact in file.every(CriticalFact):
        yield fact, "source", Naming.SOURCE, fact.sources
    for cell in file.every(Cell):
        yield cell, "outcome", Naming.OUTCOME, (cell.outcome,)
    for validity in file.every(Validity):
        yield validity, "source", Naming.SOURCE, validity.sources


def unknown_name(got: Gathered, naming: Naming, name: str, place: Place) -> Problem:
    """The problem of a name in a field that names nothing."""
    code, where = _WHERE_TO_ADD[naming]
    return fault(
        code,
        place,
        f"There is no {naming} called `{name}`.",
        f"{got.names[naming].hint(name)} `{name}` {where}.",
    )

"""Numbers that are read off a bench: each can be read there, has a name of its own, and is used."""

from __future__ import annotations

from collections.abc import Generator, Iterator
from fractions import Fraction

from journeybook.content.arithmetic import Expression, parse
from journeybook.content.bench_readings import ReadingFlaw, read_off
from journeybook.content.file_read import FileRead
from journeybook.content.gathered import SheetsRead
from journeybook.content.model import NumberQuestion
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem


def check_readings(
    file: FileRead, question: NumberQuestion, sheets: SheetsRead
) -> Generator[Problem, None, dict[str, Fraction] | None]:
    """Yields what is wrong with ``reads``.

    Returns what is read by its name, or None where it cannot be relied on.
    """
    found: dict[str, Fraction] = {}
    sound = True
    for name, reading in question.reads.items():
        value = None if sheets.unread else read_off(reading, sheets.benches, sheets.values)
        if isinstance(value, ReadingFlaw):
            yield fault("Q055", file.place(reading, value.key), value.message, value.mend)
        if isinstance(value, Fraction):
            found[name] = value
        else:
            sound = False
    yield from _check_names(file, question)
    return found if sound else None


def _check_names(file: FileRead, question: NumberQuestion) -> Iterator[Problem]:
    expressions = [parse(text) for text in (question.right, *(slip.value for slip in question.slips))]
    if not all(isinstance(one, Expression) for one in expressions):
        return
    used = {name for one in expressions if isinstance(one, Expression) for name in one.names}
    for name, reading in question.reads.items():
        if any(name in row for row in question.given):
            yield fault(
                "Q055",
                file.place(reading),
                f"`{name}` is both given and read off a bench.",
                "Give one of the two another name.",
            )
        elif name not in used:
            yield fault(
                "Q055",
                file.place(reading),
                f"`{name}` is read off a bench and not used.",
                f"Use `{name}` in `right`, or take it out of `reads`.",
            )

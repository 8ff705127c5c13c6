"""The numbers of ``given``: each is there for something, and two rows that ask the same have one answer.

A number may be shown and not used (a distractor), or used and not shown (the row of a table, looked up by
another number that is shown).
"""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.arithmetic import Expression, decimal_text, parse
from journeybook.content.bench_readings import readings_of
from journeybook.content.file_read import FileRead
from journeybook.content.gathered import SheetsRead
from journeybook.content.model import NumberQuestion
from journeybook.content.number_values import right_values
from journeybook.content.references import Reference, RefersTo, references_in
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem


def check_given_numbers(file: FileRead, sheets: SheetsRead) -> Iterator[Problem]:
    """Idle names, and rows that no learner could tell apart."""
    for question in file.every(NumberQuestion):
        if question.given:
            yield from _check_idle(file, question)
        if len(question.given) > 1:
            yield from _check_told_apart(file, question, sheets)


def _check_idle(file: FileRead, question: NumberQuestion) -> Iterator[Problem]:
    used = _shown(question.ask) | _shown(question.why) | _named(question.right)
    for slip in question.slips:
        used |= _named(slip.value) | _shown(slip.reason)
    for name in question.given[0]:
        if name not in used:
            yield fault(
                "Q042",
                file.place(question, "given"),
                f"The given number `{name}` is neither used nor shown.",
                f"Use it in `right`, show `{{{name}}}` in `ask`, or take it out of `given`.",
            )


def _check_told_apart(file: FileRead, question: NumberQuestion, sheets: SheetsRead) -> Iterator[Problem]:
    shown = _shown(question.ask)
    first_with: dict[tuple[str, ...], int] = {}
    alike: list[tuple[int, int]] = []
    for later, row in enumerate(question.given):
        earlier = first_with.setdefault(tuple(row.get(name, "") for name in sorted(shown)), later)
        if earlier != later:
            alike.append((earlier, later))
    needed = {name for name in _named(question.right) if "." not in name and name not in question.reads}
    if not alike or not all(needed <= row.keys() for row in question.given):
        return  # Nothing is alike, or rows and names do not fit, which is a fault of its own.
    try:
        rights = right_values(question, sheets.values, readings_of(question, sheets.benches, sheets.values))
    except ValueError:
        return  # The same holds for what cannot be worked out.
    origin = file.origins[id(question)]
    rows = origin.container["given"]
    for earlier, later in alike:
        if rights[earlier] != rights[later]:
            yield fault(
                "Q050",
                origin.document.place(rows, later, trail=f"{origin.trail}, row {later + 1}"),
                f"This row shows a learner the same as row {earlier + 1}, but its answer is "
                f"{decimal_text(rights[later], 6)} and not {decimal_text(rights[earlier], 6)}.",
                "Show in `ask` the numbers that tell the rows apart.",
                (origin.document.place(rows, earlier, trail=f"{origin.trail}, row {earlier + 1}"),),
            )


def _shown(text: str) -> set[str]:
    return {
        one.name for one in references_in(text) if isinstance(one, Reference) and one.to is RefersTo.GIVEN
    }


def _named(text: str) -> set[str]:
    expression = parse(text)
    return set(expression.names) if isinstance(expression, Expression) else set()

"""The exact numbers of a number question: its given rows, its right answer, its tolerance and its slips.

Where a number is written as ``{kit.NAME}`` or ``{profile.NAME}`` it is the value on that sheet. Marking and
the cross-checks both work from here, so that what was checked is what is marked.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from journeybook.content.arithmetic import Expression, Flaw, parse
from journeybook.content.model import NumberQuestion, Value

Sheets = Mapping[str, Mapping[str, Value]]
"""``kit`` and ``profile`` -> their values by id."""

NOTHING_READ: Mapping[str, Fraction] = {}
_TOLERANCE = re.compile(r"(?P<number>\d{1,12}(?:\.\d{1,12})?)\s*(?P<percent>%)?", re.ASCII)
_NUMBER = re.compile(r"-?\d{1,60}(?:\.\d{1,60})?", re.ASCII)


@dataclass(frozen=True, kw_only=True)
class Tolerance:
    """How far off still counts as right, both ends included."""

    amount: Fraction
    in_percent: bool

    def around(self, right: Fraction) -> Fraction:
        """The tolerance for one right value, in its unit."""
        return abs(right) * self.amount / 100 if self.in_percent else self.amount


def read_tolerance(text: str) -> Tolerance | None:
    """``5``, ``0.5`` or ``3 %``; None for anything else."""
    found = _TOLERANCE.fullmatch(text.strip())
    if found is None:
        return None
    return Tolerance(amount=Fraction(found["number"]), in_percent=bool(found["percent"]))


def sheet_numbers(names: tuple[str, ...], sheets: Sheets) -> dict[str, Fraction] | Flaw:
    """The numbers of the references (``kit.minimum-flow``) among an expression's names."""
    numbers: dict[str, Fraction] = {}
    for name in names:
        sheet, dot, value_id = name.partition(".")
        if not dot:
            continue
        value = sheets.get(sheet, {}).get(value_id)
        if value is None:
            return Flaw(
                column=1, message=f"`{{{name}}}` names no value", mend="Correct the name, or add the value."
            )
        if not _NUMBER.fullmatch(value.value.strip()):
            return Flaw(
                column=1,
                message=f"`{{{name}}}` is `{value.value[:40]}`, which is not a number",
                mend="Name a value that is a number alone.",
            )
        numbers[name] = Fraction(value.value.strip())
    return numbers


def work_out(expression: Expression, given: Mapping[str, Fraction], sheets: Sheets) -> Fraction | Flaw:
    """An expression's exact value for one row."""
    numbers = sheet_numbers(expression.names, sheets)
    if isinstance(numbers, Flaw):
        return numbers
    return expression.value({**given, **numbers})


def given_number(written: str, sheets: Sheets) -> Fraction | Flaw:
    """A number of ``given``: a number or one reference, perhaps with a minus before it."""
    if written.isascii() and written.isdigit() and len(written) < 16:
        return Fraction(int(written))
    expression = parse(written)
    if isinstance(expression, Flaw):
        return expression
    if not expression.is_plain:
        return Flaw(
            column=1,
            message=f"`{written[:40]}` is not a number alone",
            mend="Write a number or one `{kit.NAME}`.",
        )
    return work_out(expression, {}, sheets)


def given_rows(
    question: NumberQuestion, sheets: Sheets, read: Mapping[str, Fraction] = NOTHING_READ
) -> list[dict[str, Fraction]]:
    """The rows of ``given`` as numbers, each with what is ``read`` off a bench; one row where there is none.

    Raises ``ValueError`` for a row that the cross-checks would have refused.
    """
    rows: list[dict[str, Fraction]] = []
    for row in question.given:
        numbers: dict[str, Fraction] = dict(read)
        for name, written in row.items():
            number = given_number(written, sheets)
            if isinstance(number, Flaw):
                raise ValueError(f"{question.id}: {number.message}")
            numbers[name] = number
        rows.append(numbers)
    return rows or [dict(read)]


def right_values(
    question: NumberQuestion, sheets: Sheets, read: Mapping[str, Fraction] = NOTHING_READ
) -> list[Fraction]:
    """The exact right value of each variant, in the question's unit.

    Raises ``ValueError`` as ``given_rows`` does.
    """
    expression = parse(question.right)
    if isinstance(expression, Flaw):
        raise ValueError(f"{question.id}: {expression.message}")
    values: list[Fraction] = []
    for row in given_rows(question, sheets, read):
        value = work_out(expression, row, sheets)
        if isinstance(value, Flaw):
            raise ValueError(f"{question.id}: {value.message}")
        values.append(value)
    return values

"""number questions: everything that is worked out can be worked out, for every variant, and the units fit."""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterator
from fractions import Fraction
from functools import partial

from journeybook.content.arithmetic import Expression, Flaw, decimal_text, parse
from journeybook.content.checks.in_expression import at_name, inside, unsure_sheet
from journeybook.content.checks.reading_units import check_reading_units
from journeybook.content.checks.readings import check_readings
from journeybook.content.file_read import FileRead
from journeybook.content.gathered import SheetsRead
from journeybook.content.model import NumberQuestion
from journeybook.content.number_values import given_number, read_tolerance, work_out
from journeybook.content.units import UNITS
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.near import choice_of, nearest


def check_numbers(file: FileRead, sheets: SheetsRead) -> Iterator[Problem]:
    """Right answers, tolerances, slips, given numbers and units of every number question."""
    for question in file.every(NumberQuestion):
        yield from _check_units(file, question)
        if read_tolerance(question.tolerance) is None:
            yield fault(
                "Q044",
                file.place(question, "tolerance"),
                f"The tolerance `{question.tolerance[:40]}` is neither a number nor a percentage.",
                'Write a number in the unit of the answer such as "5", or a percentage such as "3 %".',
            )
        rows = yield from _read_rows(file, question, sheets)
        read = yield from check_readings(file, question, sheets)
        if read is not None:
            yield from check_reading_units(file, question, sheets)
        if rows is not None and read is not None:
            yield from _check_expressions(file, question, sheets, [{**read, **row} for row in rows])


def _flaw(place: Place, flaw: Flaw, text: str, around: str = "") -> Problem:
    return fault("Q040", inside(place, flaw, text), f"{flaw.message}{around}.", flaw.mend)


def _read_rows(
    file: FileRead, question: NumberQuestion, sheets: SheetsRead
) -> Generator[Problem, None, list[dict[str, Fraction]] | None]:
    """Yields what is wrong with ``given``.

    Returns its rows as numbers, or None where they cannot be relied on.
    """
    rows: list[dict[str, Fraction]] = []
    sound = True
    raw = file.origins[id(question)].container.get("given", [])
    document = file.origins[id(question)].document
    trail = file.origins[id(question)].trail
    for index, row in enumerate(question.given):
        if row.keys() != question.given[0].keys():
            sound = False
            odd = sorted(row.keys() ^ question.given[0].keys())
            yield fault(
                "Q041",
                document.place(raw, index, trail=f"{trail}, row {index + 1}"),
                "This row and the first do not have the same names: "
                f"{', '.join(f'`{name}`' for name in odd)}.",
                "Give every row of `given` the same names.",
                (document.place(raw, 0, trail=f"{trail}, row 1"),),
            )
        numbers: dict[str, Fraction] = {}
        for name, written in row.items():
            number = given_number(written, sheets.values)
            if isinstance(number, Flaw):
                sound = False
                expression = parse(written)
                if not (isinstance(expression, Expression) and unsure_sheet(sheets, expression.names)):
                    place = document.place(raw[index], name, trail=f"{trail}, row {index + 1}")
                    yield fault("Q049", place, f"{number.message}.", number.mend)
            else:
                numbers[name] = number
        rows.append(numbers)
    return (rows or [{}]) if sound else None


def _check_expressions(
    file: FileRead, question: NumberQuestion, sheets: SheetsRead, rows: list[dict[str, Fraction]]
) -> Iterator[Problem]:
    rights = yield from _work_out_rows(
        question, question.right, partial(file.place, question, "right"), sheets, rows
    )
    tolerance = read_tolerance(question.tolerance)
    for slip in question.slips:
        place = partial(file.place, slip, "value")
        values = yield from _work_out_rows(question, slip.value, place, sheets, rows)
        if rights is None or values is None or tolerance is None:
            continue
        for index, (right, value) in enumerate(zip(rights, values, strict=True)):
            if abs(value - right) <= tolerance.around(right):
                row = f" in row {index + 1}" if question.given else ""
                yield fault(
                    "Q048",
                    place(),
                    f"The slip gives {decimal_text(value, 6)}{row}, which the tolerance would mark right "
                    f"(right is {decimal_text(right, 6)}).",
                    "Change the slip, the given numbers or the tolerance.",
                )
                break


def _work_out_rows(
    question: NumberQuestion,
    text: str,
    place: Callable[[], Place],
    sheets: SheetsRead,
    rows: list[dict[str, Fraction]],
) -> Generator[Problem, None, list[Fraction] | None]:
    """Yields what is wrong with one expression; returns its value for each row, or None."""
    expression = parse(text)
    if isinstance(expression, Flaw):
        yield _flaw(place(), expression, text)
        return None
    unknown = [name for name in expression.names if "." not in name and name not in rows[0]]
    for name in unknown:
        names = list(rows[0])
        near = nearest(name, names) or tuple(names)
        cure = choice_of(near) if near else "Write a number"
        yield fault(
            "Q043",
            at_name(place(), name, text),
            f"`{name}` is not among the given numbers.",
            f"{cure}, or add `{name}` to every row of `given`.",
        )
    if unknown or unsure_sheet(sheets, expression.names):
        return None
    values: list[Fraction] = []
    for index, row in enumerate(rows):
        value = work_out(expression, row, sheets.values)
        if isinstance(value, Flaw):
            around = f" in row {index + 1} of `given`" if question.given else ""
            yield _flaw(place(), value, text, around)
            return None
        values.append(value)
    return values


def _check_units(file: FileRead, question: NumberQuestion) -> Iterator[Problem]:
    if question.unit and question.unit not in UNITS:
        yield _unknown_unit(question.unit, file.place(question, "unit"))
    for index, unit in enumerate(question.units):
        if unit not in UNITS:
            yield _unknown_unit(unit, file.place(question, "units", index))
    if question.units and not question.unit:
        yield fault(
            "Q046",
            file.place(question, "units"),
            "Other units are accepted, but the answer has no unit of its own.",
            "Add `unit:`, the unit of the right answer.",
        )
    if question.unit_needed and not question.unit:
        yield fault(
            "Q046",
            file.place(question, "unit-needed"),
            "A unit is asked for, but the answer has none.",
            "Add `unit:`, the unit of the right answer.",
        )
    own = UNITS.get(question.unit)
    for index, name in enumerate(question.units):
        other = UNITS.get(name)
        if own and other and own.dimension != other.dimension:
            yield fault(
                "Q046",
                file.place(question, "units", index),
                f"`{name}` measures {other.dimension}, but `{own.symbol}` measures {own.dimension}.",
                f"Take it out, or use a unit of {own.dimension}: "
                f"{', '.join(one.symbol for one in UNITS.values() if one.dimension == own.dimension)}.",
            )


def _unknown_unit(unit: str, place: Place) -> Problem:
    near = nearest(unit, UNITS)
    cure = f"Write {' or '.join(f'`{one}`' for one in near)}." if near else f"Use one of {', '.join(UNITS)}."
    return fault("Q045", place, f"There is no unit written `{unit}` in the table.", cure)

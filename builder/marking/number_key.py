"""How a number question becomes a key: every variant worked out now, exactly, so that nothing computes later.

Beside each right interval stand the slips: wrong numbers with a known cause. A slip is as wide as the
tolerance makes it, in percent of itself where the tolerance is a percentage.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from journeybook.content.arithmetic import Flaw, parse
from journeybook.content.bench_readings import readings_of
from journeybook.content.model import Course, NumberQuestion
from journeybook.content.number_values import Sheets, Tolerance, given_rows, read_tolerance, work_out
from journeybook.content.units import factor_between
from journeybook.marking.kind import Json
from journeybook.marking.typed_number import fraction_text


class NoKey(ValueError):  # noqa: N818 - it says what is missing
    """A number question that cannot be worked out; the loader refuses it with its line."""


def lower(question: NumberQuestion, course: Course) -> dict[str, Json]:
    """Return ``{"kind", "unit", "unit-needed", "units", "variants"}``, fractions as text ``n`` or ``n/d``.

    A variant is ``{"low", "high"}``, and ``"slips": [{"low", "high"}]`` where the question has slips. Raises
    NoKey where an expression, a value of the kit sheet, the tolerance or a unit cannot be used.
    """
    sheets = {"kit": course.kit.values, "profile": course.profile.values}
    tolerance = read_tolerance(question.tolerance)
    if tolerance is None:
        raise NoKey(f"question {question.id}: {question.tolerance} is no tolerance")
    try:
        rows = given_rows(question, sheets, readings_of(question, course.benches, sheets))
    except ValueError as error:
        raise NoKey(f"question {error}") from error
    try:
        return {
            "kind": "number",
            "unit": question.unit,
            "unit-needed": question.unit_needed,
            "units": _units(question),
            "variants": [_variant(question, row, sheets, tolerance) for row in rows],
        }
    except NoKey as error:
        raise NoKey(f"question {question.id}: {error}") from error


def _units(question: NumberQuestion) -> dict[str, Json]:
    """Return the factor of each accepted unit into the question's own."""
    if question.unit == "":
        return {}
    units: dict[str, Json] = {question.unit: "1"}
    for unit in question.units:
        factor = factor_between(unit, question.unit)
        if factor is None:
            raise NoKey(f"{unit} does not convert into {question.unit}")
        units[unit] = fraction_text(factor)
    return units


def _variant(
    question: NumberQuestion, row: Mapping[str, Fraction], sheets: Sheets, tolerance: Tolerance
) -> dict[str, Json]:
    variant = _interval(question.right, row, sheets, tolerance)
    if question.slips:
        variant["slips"] = [_interval(slip.value, row, sheets, tolerance) for slip in question.slips]
    return variant


def _interval(
    text: str, row: Mapping[str, Fraction], sheets: Sheets, tolerance: Tolerance
) -> dict[str, Json]:
    expression = parse(text)
    middle = expression if isinstance(expression, Flaw) else work_out(expression, row, sheets)
    if isinstance(middle, Flaw):
        raise NoKey(f"{text}: {middle.message}")
    reach = tolerance.around(middle)
    return {"low": fraction_text(middle - reach), "high": fraction_text(middle + reach)}

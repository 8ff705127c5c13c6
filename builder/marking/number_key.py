"""How a number question becomes a key: every variant worked out now, exactly, so that nothing computes later.

Beside each right interval stand the slips: wrong numbers with a known cause. A slip is as wide as the
tolerance makes it, in percent of itself where the tolerance is a percentage.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from journeybook.content.arithmetic import Flaw, parse
from journeybook.content.model import Course, NumberQuestion
from journeybook.content.units import factor_between
from journeybook.marking.kind import Json
from journeybook.marking.typed_number import fraction_text

_PERCENT = re.compile(r"(.*?)\s*%", re.DOTALL)


class NoKey(ValueError):  # noqa: N818 - it says what is missing
    """A number question that cannot be worked out; the loader refuses it with its line."""


def lower(question: NumberQuestion, course: Course) -> dict[str, Json]:
    """Return ``{"kind", "unit", "unit-needed", "units", "variants"}``, fractions as text ``n`` or ``n/d``.

    A variant is ``{"low", "high"}``, and ``"slips": [{"low", "high"}]`` where the question has slips. Raises
    NoKey where an expression, a value of the kit sheet or a unit cannot be used.
    """
    try:
        return {
            "kind": "number",
            "unit": question.unit,
            "unit-needed": question.unit_needed,
            "units": _units(question),
            "variants": [_variant(question, course, given) for given in question.given or ({},)],
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


def _variant(question: NumberQuestion, course: Course, given: Mapping[str, str]) -> dict[str, Json]:
    names = {name: worked_out(text, {}, course) for name, text in given.items()}
    percentage = _PERCENT.fullmatch(question.tolerance.strip())
    tolerance = worked_out(percentage[1] if percentage else question.tolerance, names, course)

    def interval(text: str) -> dict[str, Json]:
        middle = worked_out(text, names, course)
        reach = abs(middle) * tolerance / 100 if percentage else tolerance
        return {"low": fraction_text(middle - reach), "high": fraction_text(middle + reach)}

    variant = interval(question.right)
    if question.slips:
        variant["slips"] = [interval(slip.value) for slip in question.slips]
    return variant


def worked_out(text: str, names: Mapping[str, Fraction], course: Course) -> Fraction:
    """Return the exact value of an expression. Raises NoKey.

    ``{kit.NAME}`` and ``{profile.NAME}`` are numbers of those sheets.
    """
    expression = parse(text)
    if isinstance(expression, Flaw):
        raise NoKey(f"{text}: {expression.message}")
    sheets = {name: _sheet_number(name, course) for name in expression.names if "." in name}
    value = expression.value({**names, **sheets})
    if isinstance(value, Flaw):
        raise NoKey(f"{text}: {value.message}")
    return value


def _sheet_number(reference: str, course: Course) -> Fraction:
    """Return the number behind ``kit.NAME`` or ``profile.NAME``."""
    sheet_name, _, value_id = reference.partition(".")
    sheet = course.kit if sheet_name == "kit" else course.profile
    if value_id not in sheet.values:
        raise NoKey(f"{reference} is not on the sheet")
    written = parse(sheet.values[value_id].value)
    value = written if isinstance(written, Flaw) else written.value({})
    if isinstance(value, Flaw):
        raise NoKey(f"{reference} is not a number")
    return value

"""Numbers that are read off a bench come in the unit of the reading; the answer has to be in that unit, or converted.

Units of one another are not worked out through a whole expression. Told is what cannot be right: a reading, or a sum of
readings, in another unit than the answer's. Where ``right`` multiplies or divides, it may convert; then only a factor
that is nowhere in it is told, as a warning.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import product

from journeybook.content.arithmetic import Expression, decimal_text, parse
from journeybook.content.file_read import FileRead
from journeybook.content.gathered import SheetsRead
from journeybook.content.model import Bench, BenchReading, FanBench, NumberQuestion
from journeybook.content.number_values import given_number
from journeybook.content.units import UNITS, canonical_unit, factor_between
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Problem


def check_reading_units(file: FileRead, question: NumberQuestion, sheets: SheetsRead) -> Iterator[Problem]:
    """Q056 for each reading in another unit than the answer. What is read has been found sound."""
    right = parse(question.right)
    if question.unit not in UNITS or not isinstance(right, Expression):
        return
    can_convert = any(step[0] == "op" and step[1] in ("*", "/") for step in right.postfix)
    numbers = _numbers(right, question, sheets)
    for name, reading in question.reads.items():
        unit = _unit_of(reading, sheets.benches[reading.bench])
        if name not in right.names or unit is None or unit == question.unit:
            continue
        factor = factor_between(unit, question.unit)
        message = f"`{name}` is read in {unit}, but the answer is in {question.unit}."
        if not can_convert:
            yield fault("Q056", file.place(question, "unit"), message, _mend(name, unit, factor))
        elif factor is not None and not _holds(numbers, factor):
            yield warning("Q056", file.place(question, "unit"), message, _mend(name, unit, factor))


def _unit_of(reading: BenchReading, bench: Bench) -> str | None:
    """The table's symbol for the unit in which a bench shows a reading."""
    shown = bench.readings if isinstance(bench, FanBench) else ()
    return next((canonical_unit(one.unit) for one in shown if one.of == reading.of), None)


def _numbers(right: Expression, question: NumberQuestion, sheets: SheetsRead) -> set[Fraction]:
    """Every number that stands in the expression, those of the given rows and of the sheets included."""
    found = {Fraction(str(step[1])) for step in right.postfix if step[0] == "n"}
    written = [f"{{{name}}}" for name in right.names if "." in name]
    written += [text for row in question.given for name, text in row.items() if name in right.names]
    values = (given_number(text, sheets.values) for text in written)
    return found | {value for value in values if isinstance(value, Fraction)}


def _holds(numbers: set[Fraction], factor: Fraction) -> bool:
    """Whether one of the numbers, or two of them (``* 1000 / 60``), make the factor; to a part in a thousand."""
    made = {one for number in numbers if number for one in (number, 1 / number)}
    made |= {one * other for one, other in product(made, repeat=2)}
    return any(abs(one / factor - 1) <= Fraction(1, 1000) for one in made)


def _mend(name: str, unit: str, factor: Fraction | None) -> str:
    own = f"Write `unit: {unit}`"
    if factor is None:
        return f"{own}, or work out in `right` what is asked for."
    if Fraction(decimal_text(factor, 9)) == factor and factor >= 1:
        by = f"{name} * {decimal_text(factor, 9)}"
    elif Fraction(decimal_text(1 / factor, 9)) == 1 / factor:
        by = f"{name} / {decimal_text(1 / factor, 9)}"
    else:
        by = f"{name} * {factor.numerator} / {factor.denominator}"
    return f"{own}, or convert in `right`: `{by}`."

"""Calculators: every formula can be worked out at the start and at the ends of the ranges, and every name is there."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction

from journeybook.content.arithmetic import Flaw, Step, decimal_text, parse
from journeybook.content.calculations import Range, Working, folded, range_of
from journeybook.content.checks.in_expression import at_name, inside, unsure_sheet
from journeybook.content.file_read import FileRead
from journeybook.content.gathered import SheetsRead
from journeybook.content.model.calculators import Calculator, CalculatorInput, CalculatorResult
from journeybook.content.number_values import sheet_numbers
from journeybook.content.postfix import Stopped
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.source.near import choice_of, nearest

_STOPPED = {
    Stopped.ZERO: (
        "it divides by zero",
        "Narrow the ranges, or change the formula, such as `max(1, …)` below.",
    ),
    Stopped.LARGE: (
        "the number becomes far too large",
        "Check the formula; no real quantity has 200 digits.",
    ),
    Stopped.PLACES: (
        "`round` cannot round to that many places",
        "Give a whole number of places, 12 at most.",
    ),
}

_LIKE_THOUSANDS = re.compile(r"-?[1-9][0-9]{0,2}\.[0-9]{3}")
"""What is neither guessed nor taken when somebody types it (``marking.typed_number``)."""


def check_calculators(file: FileRead, sheets: SheetsRead) -> list[Problem]:
    """What is wrong with the calculators of one file, whatever the others hold but for the sheets."""
    problems: list[Problem] = []
    for calculator in file.every(Calculator):
        found = [*_check_ids(file, calculator), *_check_names(file, calculator)]
        ranges: dict[str, Range] = {}
        for one in calculator.inputs:
            reached = _check_range(file, one, sheets, found)
            if reached is not None:
                ranges[one.name] = reached
        programs = [_check_formula(file, result, sheets, found) for result in calculator.results]
        if not found and len(ranges) == len(calculator.inputs) and None not in programs:
            ready = Working(
                ranges=ranges,
                programs=tuple(
                    (result.name, steps)
                    for result, steps in zip(calculator.results, programs, strict=True)
                    if steps is not None
                ),
            )
            found.extend(_check_outcomes(file, calculator, ready))
        problems.extend(found)
    return problems


def _check_ids(file: FileRead, calculator: Calculator) -> Iterator[Problem]:
    seen: dict[str, object] = {}
    for line in calculator.lines:
        first = seen.setdefault(line.name, line)
        if first is not line:
            yield fault(
                "C016",
                file.place(line, "id"),
                f"There are two lines with the id `{line.id}`.",
                "Give one of them another id, and write it so in the formulas.",
                (file.place(first, "id"),),
            )


def _check_names(file: FileRead, calculator: Calculator) -> Iterator[Problem]:
    known = {one.name for one in calculator.inputs}
    later = {one.name for one in calculator.results}
    used: set[str] = set()
    every_name_is_there = True
    for result in calculator.results:
        expression = parse(result.formula)
        if isinstance(expression, Flaw):
            every_name_is_there = False  # Told with its column by ``_check_formula``.
        else:
            used.update(expression.names)
            unknown = [name for name in expression.names if "." not in name and name not in known]
            every_name_is_there &= not unknown
            yield from _unknown_names(file, result, unknown, known, later)
        known.add(result.name)
    for one in calculator.inputs:
        if every_name_is_there and one.name not in used:
            yield fault(
                "E006",
                file.place(one),
                f"No formula uses the input `{one.id}`.",
                f"Use `{one.name}` in a formula, or take the input out.",
            )


def _unknown_names(
    file: FileRead, result: CalculatorResult, unknown: list[str], known: set[str], later: set[str]
) -> Iterator[Problem]:
    place = file.place(result, "formula")
    for name in sorted(known, key=len, reverse=True):
        hyphened = name.replace("_", "-")
        parts = set(name.split("_"))
        if len(parts) > 1 and not parts.isdisjoint(unknown) and hyphened in result.formula:
            unknown = [one for one in unknown if one not in parts]
            yield fault(
                "E003",
                at_name(place, hyphened, result.formula),
                f"In a formula the hyphen of `{hyphened}` is a minus.",
                f"Write `{name}`.",
            )
    for name in unknown:
        where = at_name(place, name, result.formula)
        if name in later:
            yield fault(
                "E003",
                where,
                f"`{name}` is worked out only here or further down.",
                "Put that result before this one; a formula uses inputs and the results above it.",
            )
            continue
        near = nearest(name, known)
        yield fault(
            "E003",
            where,
            f"`{name}` is neither an input nor a result above this one.",
            f"{choice_of(near or sorted(known))}, or add an input `{name}`.",
        )


def _check_range(
    file: FileRead, one: CalculatorInput, sheets: SheetsRead, problems: list[Problem]
) -> Range | None:
    """The range; None after noting what is wrong with it, or where a sheet could not be read."""

    def refuse(key: str, message: str, mend: str) -> None:
        problems.append(fault("E004", file.place(one, key), message, mend))

    for key in ("least", "most"):
        if one.choices and getattr(one, key):
            refuse(
                key, f"An input with `choices` has no `{key}`.", "Take it out; the choices are all there is."
            )
            return None
        if not one.choices and not getattr(one, key):
            refuse(key, f"The input `{one.id}` has no `{key}`.", f"Add `{key}:`, or `choices:`.")
            return None
    found = range_of(one, sheets.values)
    if not isinstance(found, Range):
        key, flaw = found
        written = [preset.value for preset in one.choices] if key == "choices" else [getattr(one, key)]
        if not any(unsure_sheet(sheets, _sheet_names(text)) for text in written):
            is_sum = any(isinstance(parse(text), Flaw) for text in written)
            message = f"`{written[0][:40]}` is not a number alone" if is_sum else flaw.message
            mend = "Write a number; its unit stands under `unit`." if is_sum else flaw.mend
            refuse(key, f"{message}.", mend)
        return None
    if found.least > found.most:
        refuse("most", "The largest number is below the smallest.", "Turn `least` and `most` round.")
        return None
    if found.choices and found.start not in found.choices:
        refuse(
            "start",
            f"The start {decimal_text(found.start)} is not among the choices.",
            f"{choice_of(decimal_text(value) for value in found.choices)}.",
        )
        return None
    if not found.least <= found.start <= found.most:
        refuse(
            "start",
            f"The start {decimal_text(found.start)} is not from {decimal_text(found.least)} to "
            f"{decimal_text(found.most)}.",
            "Change it, or the range; a value of a sheet may differ in another profile.",
        )
        return None
    if not found.choices:
        for key in ("least", "most", "start"):
            value: Fraction = getattr(found, key)
            if (value * 10**one.places).denominator != 1:
                refuse(
                    key,
                    f"{decimal_text(value)} has more decimals than may be typed here ({one.places}).",
                    "Raise `places`, or shorten the number.",
                )
                return None
        if _LIKE_THOUSANDS.fullmatch(decimal_text(found.start)):
            refuse(
                "start",
                f"The start {decimal_text(found.start)} could be read as a number of thousands, too.",
                "Give it other than three decimals; whoever types it would be asked which one is meant.",
            )
            return None
    return found


def _sheet_names(text: str) -> list[str]:
    expression = parse(text)
    return [] if isinstance(expression, Flaw) else list(expression.names)


def _check_formula(
    file: FileRead, result: CalculatorResult, sheets: SheetsRead, problems: list[Problem]
) -> tuple[Step, ...] | None:
    place = file.place(result, "formula")
    expression = parse(result.formula)
    if isinstance(expression, Flaw):
        problems.append(
            fault(
                "E002", inside(place, expression, result.formula), f"{expression.message}.", expression.mend
            )
        )
        return None
    numbers = sheet_numbers(expression.names, sheets.values)
    if isinstance(numbers, Flaw):
        if not unsure_sheet(sheets, expression.names):
            problems.append(fault("E002", place, f"{numbers.message}.", numbers.mend))
        return None
    steps = folded(result.formula, sheets.values)
    return None if isinstance(steps, Flaw) else steps


def _check_outcomes(file: FileRead, calculator: Calculator, ready: Working) -> Iterator[Problem]:
    told: set[str] = set()
    for where, inputs in _tried(ready):
        for result in calculator.results:
            found = ready.results(inputs)[result.name]
            if isinstance(found, Stopped) and result.name not in told and not _waits(result, told):
                told.add(result.name)
                message, mend = _STOPPED[found]
                yield fault(
                    "E005",
                    file.place(result, "formula"),
                    f"{where}, with {_written(calculator, inputs)}, {message}.",
                    mend,
                )


def _waits(result: CalculatorResult, told: set[str]) -> bool:
    """True where it rests on a result that is told already."""
    expression = parse(result.formula)
    return not isinstance(expression, Flaw) and not told.isdisjoint(expression.names)


def _tried(ready: Working) -> Iterator[tuple[str, dict[str, Fraction]]]:
    yield "At the start", ready.starts
    for corner in ready.corners():
        yield "At the ends of the ranges", corner


def _written(calculator: Calculator, inputs: Mapping[str, Fraction]) -> str:
    shown = [
        f"{one.id} {decimal_text(inputs[one.name])}{f' {one.unit}' if one.unit else ''}"
        for one in calculator.inputs
    ]
    return ", ".join(shown)

"""A calculator made ready to work: numbers for its ranges, and each formula as steps without names of sheets.

Checks, pages, compiled course and published tests all work from here, so that what was tried is what runs.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from journeybook.content.arithmetic import Flaw, Step, fraction_text, parse
from journeybook.content.model.calculators import Calculator, CalculatorInput
from journeybook.content.number_values import Sheets, given_number, sheet_numbers
from journeybook.content.postfix import Stopped, work_out_all


@dataclass(frozen=True, kw_only=True)
class Range:
    """The numbers that an input takes."""

    least: Fraction
    most: Fraction
    start: Fraction
    choices: tuple[Fraction, ...] = ()

    @property
    def ends(self) -> tuple[Fraction, ...]:
        """Both ends; one where they are the same."""
        return (self.least,) if self.least == self.most else (self.least, self.most)


@dataclass(frozen=True, kw_only=True)
class Working:
    """A calculator that can be worked."""

    ranges: Mapping[str, Range]
    """Name of an input -> its range."""
    programs: tuple[tuple[str, tuple[Step, ...]], ...]
    """Name of each result with its steps, in order."""

    @property
    def starts(self) -> dict[str, Fraction]:
        """What stands in the inputs at first."""
        return {name: one.start for name, one in self.ranges.items()}

    def results(self, inputs: Mapping[str, Fraction]) -> dict[str, Fraction | Stopped]:
        """Every result by its name, unrounded."""
        return work_out_all(self.programs, inputs)

    def corners(self) -> Iterator[dict[str, Fraction]]:
        """Every combination of the ends of the ranges."""
        for ends in product(*(one.ends for one in self.ranges.values())):
            yield dict(zip(self.ranges, ends, strict=True))


def written_number(text: str, sheets: Sheets) -> Fraction | Flaw:
    """A number or one value of a sheet, with or without ``.number``."""
    return given_number(text.strip(), sheets)


def range_of(one: CalculatorInput, sheets: Sheets) -> Range | tuple[str, Flaw]:
    """An input's range, or the key that is no number and why."""
    numbers: dict[str, Fraction] = {}
    choices: list[Fraction] = []
    for preset in one.choices:
        value = written_number(preset.value, sheets)
        if isinstance(value, Flaw):
            return "choices", value
        choices.append(value)
    for key in ("start",) if choices else ("least", "most", "start"):
        value = written_number(getattr(one, key), sheets)
        if isinstance(value, Flaw):
            return key, value
        numbers[key] = value
    return Range(
        least=min(choices) if choices else numbers["least"],
        most=max(choices) if choices else numbers["most"],
        start=numbers["start"],
        choices=tuple(choices),
    )


def folded(text: str, sheets: Sheets) -> tuple[Step, ...] | Flaw:
    """A formula's steps with the values of the sheets as numbers."""
    expression = parse(text)
    if isinstance(expression, Flaw):
        return expression
    numbers = sheet_numbers(expression.names, sheets)
    if isinstance(numbers, Flaw):
        return numbers
    return tuple(_with_numbers(expression.postfix, numbers))


def _with_numbers(steps: Iterable[Step], numbers: Mapping[str, Fraction]) -> Iterator[Step]:
    for step in steps:
        if step[0] == "in" and step[1] in numbers:
            yield ("n", fraction_text(numbers[step[1]]))
        else:
            yield step


def working(calculator: Calculator, sheets: Sheets) -> Working:
    """The calculator ready to work. Raises ``ValueError`` for one that the cross-checks would have refused."""
    ranges: dict[str, Range] = {}
    for one in calculator.inputs:
        found = range_of(one, sheets)
        if not isinstance(found, Range):
            raise ValueError(f"{calculator.id}: {one.id}: {found[1].message}")
        ranges[one.name] = found
    programs: list[tuple[str, tuple[Step, ...]]] = []
    for result in calculator.results:
        steps = folded(result.formula, sheets)
        if isinstance(steps, Flaw):
            raise ValueError(f"{calculator.id}: {result.id}: {steps.message}")
        programs.append((result.name, steps))
    return Working(ranges=ranges, programs=tuple(programs))

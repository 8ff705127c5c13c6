"""Calculators: sums that a reader works with numbers of their own."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class Preset:
    """One of the values that an input offers, where not every number makes sense."""

    value: str
    label: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class CalculatorInput:
    """A number that the reader puts in."""

    id: str
    """Formulas call it so, with ``_`` for each hyphen."""
    label: str
    start: str
    """What stands there at first: a number, or one value of a sheet such as ``{profile.NAME}``."""
    unit: str = ""
    least: str = ""
    """Smallest number that is taken; empty only where there are ``choices``."""
    most: str = ""
    places: int = 0
    """Decimals that may be typed."""
    choices: tuple[Preset, ...] = ()
    """The only values there are to choose from; ``least`` and ``most`` are then theirs."""
    place: Place

    @property
    def name(self) -> str:
        """What formulas call it."""
        return formula_name(self.id)


@dataclass(frozen=True, kw_only=True)
class CalculatorResult:
    """A number that comes out."""

    id: str
    """Later formulas call it so, with ``_`` for each hyphen; they get it unrounded."""
    label: str
    formula: str
    """Arithmetic over the inputs, earlier results and values of the sheets."""
    unit: str = ""
    places: int = 0
    """Decimals to which it is shown."""
    note: str = ""
    place: Place

    @property
    def name(self) -> str:
        """What later formulas call it."""
        return formula_name(self.id)


@dataclass(frozen=True, kw_only=True)
class Calculator:
    """Inputs, results, and what the results must never be taken for."""

    id: str
    title: str
    intro: str
    caution: str
    """Shown before the results, always."""
    inputs: tuple[CalculatorInput, ...]
    results: tuple[CalculatorResult, ...]
    sources: tuple[str, ...] = ()
    place: Place

    @cached_property
    def lines(self) -> tuple[CalculatorInput | CalculatorResult, ...]:
        """Everything that has a letter on the ticket, in its order."""
        return (*self.inputs, *self.results)


def formula_name(name: str) -> str:
    """An id as formulas write it: there a hyphen would be a minus."""
    return name.replace("-", "_")

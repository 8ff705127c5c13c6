"""Works out steps in postfix order over exact fractions, and tells what stops it.

The twin of site_overrides/js/pure/calculate.js. What both must give for the same steps stands in
tests/vectors/calculator.json.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from enum import StrEnum
from fractions import Fraction

from journeybook.content.arithmetic import MOST_BITS, MOST_PLACES, Step, round_half_away


class Stopped(StrEnum):
    """Why there is no number."""

    ZERO = "divides-by-zero"
    LARGE = "too-large"
    PLACES = "bad-places"


class _Stop(Exception):  # noqa: N818 - it carries a reason out of the loop and never leaves this file
    def __init__(self, why: Stopped) -> None:
        super().__init__(why)
        self.why = why


def work_out_steps(steps: Iterable[Step], values: Mapping[str, Fraction]) -> Fraction | Stopped:
    """The exact value of one list of steps. Raises ``KeyError`` for a name that has no value."""
    stack: list[Fraction] = []
    try:
        for step in steps:
            if step[0] == "n":
                stack.append(_capped(Fraction(step[1])))
            elif step[0] == "in":
                stack.append(values[step[1]])
            elif step[0] == "op":
                _operate(stack, step[1])
            else:
                assert len(step) == 3
                taken = stack[-step[2] :]
                del stack[-step[2] :]
                stack.append(_capped(_call(step[1], taken)))
    except _Stop as stop:
        return stop.why
    return stack[-1]


def work_out_all(
    programs: Iterable[tuple[str, Sequence[Step]]], inputs: Mapping[str, Fraction]
) -> dict[str, Fraction | Stopped]:
    """Each program's value by its name; it may use those before it, and stops where one of these did."""
    values = dict(inputs)
    found: dict[str, Fraction | Stopped] = {}
    for name, steps in programs:
        broken = next((found[step[1]] for step in steps if step[0] == "in" and step[1] not in values), None)
        value = broken if broken is not None else work_out_steps(steps, values)
        found[name] = value
        if isinstance(value, Fraction):
            values[name] = value
    return found


def _capped(value: Fraction) -> Fraction:
    if value.numerator.bit_length() > MOST_BITS or value.denominator.bit_length() > MOST_BITS:
        raise _Stop(Stopped.LARGE)
    return value


def _operate(stack: list[Fraction], sign: str) -> None:
    right = stack.pop()
    if sign == "neg":
        stack.append(-right)
        return
    left = stack.pop()
    if sign == "+":
        value = left + right
    elif sign == "-":
        value = left - right
    elif sign == "*":
        value = left * right
    else:
        if right == 0:
            raise _Stop(Stopped.ZERO)
        value = left / right
    stack.append(_capped(value))


def _call(name: str, values: list[Fraction]) -> Fraction:
    if name == "min":
        return min(values)
    if name == "max":
        return max(values)
    if name == "ceil":
        return Fraction(-(-values[0] // 1))
    if name == "floor":
        return Fraction(values[0] // 1)
    places = values[1] if len(values) == 2 else Fraction(0)
    if places.denominator != 1 or abs(places) > MOST_PLACES:
        raise _Stop(Stopped.PLACES)
    return round_half_away(values[0], int(places))

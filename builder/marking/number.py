"""A number to work out or to read off, with its unit.

The right answer is an interval with both ends included, kept as exact fractions in the question's own unit. A
typed value is multiplied by the exact factor of the unit it was given in, and compared as integers: no
rounding, no floats, so no two machines disagree at the edge of a tolerance.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from journeybook.marking.kind import WEIGHT, Json, Key, Kind, Marked
from journeybook.marking.number_key import lower
from journeybook.marking.typed_number import Typed, read_typed


def mark(key: Key, variant: int, answer: object) -> Marked:
    """Mark ``{"value": as typed, "unit": a unit of the key or ""}``."""
    if answer is None:
        return _refused("empty")
    if not isinstance(answer, dict) or answer.keys() != {"value", "unit"}:
        return _refused("malformed")
    value, unit = answer["value"], answer["unit"]
    if not isinstance(value, str) or not isinstance(unit, str):
        return _refused("malformed")
    typed = read_typed(value)
    problem = typed.problem or _unit_problem(key, unit)
    if problem:
        return _refused(problem, typed.read)
    factor = ratio(key["units"][unit]) if unit else (1, 1)
    accepted: dict[str, Any] = key["variants"][variant]
    if _within(typed, factor, accepted):
        return Marked(WEIGHT, _remarks(typed.read, ""))
    remarks = _remarks(typed.read, "")
    for index, slip in enumerate(accepted.get("slips", ())):
        if _within(typed, factor, slip):
            remarks["slip"] = index
            break
    return Marked(0, remarks)


def _unit_problem(key: Key, unit: str) -> str:
    if unit == "":
        return "unit-missing" if key["unit-needed"] else ""
    return "" if unit in key["units"] else "unit-unknown"


def _within(typed: Typed, factor: tuple[int, int], interval: dict[str, str]) -> bool:
    """Compare low <= typed * factor <= high over the common denominator; every denominator is positive."""
    numerator = typed.digits * factor[0]
    denominator = typed.scale * factor[1]
    low, low_part = ratio(interval["low"])
    high, high_part = ratio(interval["high"])
    return low * denominator <= numerator * low_part and numerator * high_part <= high * denominator


@lru_cache(maxsize=65536)
def ratio(text: str) -> tuple[int, int]:
    """Return numerator and denominator of a key's ``n`` or ``n/d``."""
    numerator, _, denominator = text.partition("/")
    return int(numerator), int(denominator or "1")


def _remarks(read: str, problem: str) -> dict[str, Json]:
    return {"kind": "number", "read": read, "problem": problem}


def _refused(problem: str, read: str = "") -> Marked:
    return Marked(0, _remarks(read, problem))


KIND = Kind(name="number", lower=lower, mark=mark)

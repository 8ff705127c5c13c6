"""How a number that somebody typed is read: exactly, or not at all.

A comma and a point both stand for the decimal separator, because learners of one class write both. What could
be a thousands group, such as 1,000 or 1.000, is neither guessed nor marked: the page asks again. Nothing
passes through a binary float.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

END_SPACES = " \t\n\r\u00a0\u2007\u2009\u200a\u202f"
"""Ignored at both ends. Listed, because languages differ in what they call a space."""
MOST_DIGITS = 15
"""More than anybody reads off an instrument, and still exact in every spreadsheet."""

_NUMBER = re.compile(r"([+\-\u2212]?)([0-9]*)(?:([.,])([0-9]*))?")
_MAYBE_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}")


@dataclass(frozen=True, slots=True)
class Typed:
    """A typed number, or why it is none."""

    problem: str
    """Empty, ``empty``, ``not-a-number``, ``too-long`` or ``ambiguous``."""
    read: str = ""
    """How it was understood, with a point: ``10.2``. Empty where there is a problem."""
    digits: int = 0
    """The number without its separator, with its sign."""
    scale: int = 1
    """The power of ten to divide ``digits`` by."""


def read_typed(text: str) -> Typed:
    """Return what ``text`` says."""
    trimmed = text.strip(END_SPACES)
    if trimmed == "":
        return Typed("empty")
    found = _NUMBER.fullmatch(trimmed)
    if found is None:
        return Typed("not-a-number")
    sign, whole, separator, decimals = found[1], found[2], found[3], found[4] or ""
    if whole == "" and decimals == "":
        return Typed("not-a-number")
    if len(whole) + len(decimals) > MOST_DIGITS:
        return Typed("too-long")
    if separator and len(decimals) == 3 and _MAYBE_THOUSANDS.fullmatch(whole):
        return Typed("ambiguous")
    minus = "-" if sign in ("-", "\u2212") else ""
    read = minus + (whole.lstrip("0") or "0") + ("." + decimals if decimals else "")
    return Typed("", read, int(minus + whole + decimals), 10 ** len(decimals))


def fraction_text(value: Fraction) -> str:
    """Return ``n`` or ``n/d``, as keys hold fractions."""
    return str(value.numerator) if value.denominator == 1 else f"{value.numerator}/{value.denominator}"

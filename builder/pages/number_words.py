"""Exact fractions as the decimals a person reads."""

from __future__ import annotations

from fractions import Fraction

LONGEST = 6
"""Decimals shown at most."""


def decimal_words(value: Fraction) -> str:
    """Return ``value`` in decimals: exact where six places are enough, otherwise rounded to four figures.

    Rounded half to even, at least one decimal for values under 1000; no thousands mark is ever written.
    """
    scaled = value * 10**LONGEST
    if scaled.denominator == 1:
        sign = "-" if scaled < 0 else ""
        whole, part = divmod(abs(scaled.numerator), 10**LONGEST)
        return f"{sign}{whole}.{part:0{LONGEST}d}".rstrip("0").rstrip(".")
    digits_before = len(str(abs(int(value)))) if abs(value) >= 1 else 0
    places = max(1, 4 - digits_before)
    return decimal_words(Fraction(round(value, places)))

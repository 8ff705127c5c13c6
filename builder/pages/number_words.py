"""Exact fractions as the decimals a person reads."""

from __future__ import annotations

from fractions import Fraction

LONGEST = 6
"""Decimals shown at most."""


def decimal_words(value: Fraction) -> str:
    """Return ``value`` in decimals: exact where six places are enough, otherwise rounded to four figures.

    Rounded half to even, at least one decimal for values under 1000; no thousands mark is ever written.
    """
    if (value * 10**LONGEST).denominator == 1:
        return _written(value, LONGEST)
    places = _places(value)
    return _written(Fraction(round(value, places)), places)


def accepted_words(low: Fraction, high: Fraction) -> tuple[str, str]:
    """Return both ends of what is accepted, rounded inwards: whoever types a number that is shown is marked right.

    As many decimals as ``decimal_words`` shows, and more where the ends lie so near together that they would cross;
    ``low`` is less than ``high``.
    """
    places = min(_places(low), _places(high))
    while _upwards(low, places) > -_upwards(-high, places):
        places += 1
    shown = max(places, LONGEST)
    return _written(_upwards(low, places), shown), _written(-_upwards(-high, places), shown)


def _upwards(value: Fraction, places: int) -> Fraction:
    """The least number of so many decimals that is not below ``value``; one of six decimals stays as it is."""
    if (value * 10**LONGEST).denominator == 1:
        return value
    return Fraction(-(-value * 10**places // 1), 10**places)


def _places(value: Fraction) -> int:
    digits_before = len(str(abs(int(value)))) if abs(value) >= 1 else 0
    return max(1, 4 - digits_before)


def _written(value: Fraction, places: int) -> str:
    """A number of so many decimals at most, without zeros at its end."""
    scaled = int(value * 10**places)
    whole, part = divmod(abs(scaled), 10**places)
    return f"{'-' if scaled < 0 else ''}{whole}.{part:0{places}d}".rstrip("0").rstrip(".")

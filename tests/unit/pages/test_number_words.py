from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journeybook.pages.number_words import decimal_words


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (Fraction(170), "170"),
        (Fraction(0), "0"),
        (Fraction(204, 5), "40.8"),
        (Fraction(-1, 2), "-0.5"),
        (Fraction(1, 10**6), "0.000001"),
        (Fraction(1000000), "1000000"),
        (Fraction(1, 3), "0.3333"),
        (Fraction(50, 3), "16.67"),
        (Fraction(2000, 3), "666.7"),
        (Fraction(20000, 3), "6666.7"),
        (Fraction(-50, 3), "-16.67"),
    ],
)
def test_a_fraction_reads_as(value: Fraction, words: str) -> None:
    assert decimal_words(value) == words


@given(st.decimals(min_value=-(10**9), max_value=10**9, places=6))
def test_what_has_six_decimals_or_fewer_is_shown_exactly(value: object) -> None:
    assert Fraction(decimal_words(Fraction(str(value)))) == Fraction(str(value))

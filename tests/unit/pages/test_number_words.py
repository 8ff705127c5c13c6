from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journeybook.pages.number_words import accepted_words, decimal_words


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


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        ("59", "61", ("59", "61")),
        ("121250/157", "128750/157", ("772.3", "820")),
        ("17/3", "19/3", ("5.667", "6.333")),
        ("-19/3", "-17/3", ("-6.333", "-5.667")),
        ("33332/100000", "33334/100000", ("0.33332", "0.33334")),
        ("1/3", "333343/1000000", ("0.33334", "0.333343")),
        ("10000000/30000000", "10000001/30000000", ("0.33333334", "0.33333336")),
    ],
)
def test_what_is_accepted_is_rounded_inwards(low: str, high: str, words: tuple[str, str]) -> None:
    assert accepted_words(Fraction(low), Fraction(high)) == words


@given(
    st.fractions(min_value=-(10**6), max_value=10**6, max_denominator=997),
    st.fractions(min_value=0, max_value=50, max_denominator=997).filter(bool),
)
def test_whoever_types_an_end_that_is_shown_is_marked_right(middle: Fraction, reach: Fraction) -> None:
    low, high = accepted_words(middle - reach, middle + reach)
    assert middle - reach <= Fraction(low) <= Fraction(high) <= middle + reach

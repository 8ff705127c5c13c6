"""The balanced rule against its table and against what guessing expects.

Source: Betts, Muntean, Kim and Kao, Educ. Psychol. Meas. 82 (2022) 151-176, for the rules compared; the
values for k = 5, m = 3 were computed by hand from max(0, h/m - f/(k - m)).
"""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

import pytest

from journeybook.marking.mark import mark

KEY = {"kind": "choices", "options": list("abcde"), "right": list("abc"), "whole": False}


@pytest.mark.parametrize(
    ("picked", "expected"),
    [
        pytest.param("abcde", 0, id="picks all: 0"),
        pytest.param("", 0, id="picks none: 0"),
        pytest.param("ab", 667, id="2 right 0 wrong: .667"),
        pytest.param("abcd", 500, id="3 right 1 wrong: .500"),
        pytest.param("abc", 1000, id="exact: 1"),
    ],
)
def test_balanced_table(picked: str, expected: int) -> None:
    assert mark(KEY, 0, list(picked)).mark == expected


def test_guessing_by_coin_expects_nothing_before_the_floor() -> None:
    raw = [
        Fraction(len(set(picked) & set("abc")), 3) - Fraction(len(set(picked) & set("de")), 2)
        for number in range(6)
        for picked in combinations("abcde", number)
    ]
    assert len(raw) == 32
    assert sum(raw) == 0


def test_all_or_nothing_is_won_by_coin_in_one_of_32() -> None:
    whole = KEY | {"whole": True}
    won = [
        picked
        for number in range(6)
        for picked in combinations("abcde", number)
        if mark(whole, 0, list(picked)).mark == 1000
    ]
    assert won == [("a", "b", "c")]

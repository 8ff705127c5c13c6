"""What the scoring of sorted units is worth to somebody who guesses, by counting every answer there is.

The rule is ours, so the values beside it come from the whole enumeration: each of the places^units ways to fill in a
question is marked, which is the distribution of a guesser, to whom every place is equally likely, exactly.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import product
from typing import Any

import pytest

from journeybook.marking.mark import mark


def key(places: int, each: int, dangerous: int = 0) -> dict[str, Any]:
    """A question with ``each`` units for every place; the first ``dangerous`` of the strictest place are so."""
    names = [f"p{place}" for place in range(places)]
    right = {f"u{place}-{number}": f"p{place}" for place in range(places) for number in range(each)}
    strictest = [unit for unit, place in right.items() if place == names[-1]]
    return {
        "kind": "triage",
        "places": names,
        "units": list(right),
        "right": right,
        "dangerous": strictest[:dangerous],
        "whole": False,
    }


def every_answer(of: dict[str, Any]) -> list[dict[str, str]]:
    return [
        dict(zip(of["units"], chosen, strict=True))
        for chosen in product(of["places"], repeat=len(of["units"]))
    ]


def before_the_floor(of: dict[str, Any], answer: dict[str, str]) -> Fraction:
    """The rule as stated in DEVELOPERS.md, without its floor and without dangerous units."""
    strictness = {place: index for index, place in enumerate(of["places"])}
    apart = [strictness[answer[unit]] - strictness[of["right"][unit]] for unit in of["units"]]
    right, missed = apart.count(0), sum(1 for each in apart if each < 0)
    needless = len(apart) - right - missed
    condemning = 2 if len(of["places"]) == 2 else 1
    return Fraction(2 * right - 2 * missed - condemning * needless, 2 * len(apart))


@pytest.mark.parametrize(("places", "each"), [(3, 1), (3, 2), (2, 2), (4, 1)])
def test_the_mark_is_the_stated_rule_with_nothing_below_nought(places: int, each: int) -> None:
    of = key(places, each)
    for answer in every_answer(of):
        thousandths = max(Fraction(0), before_the_floor(of, answer)) * 1000
        assert mark(of, 0, answer).mark == int(thousandths + Fraction(1, 2))


@pytest.mark.parametrize(
    ("places", "each", "mean"),
    [
        # A third right, a third missed, a third condemned: 1/3 - 1/3 - 1/6.
        (3, 1, Fraction(-1, 6)),
        (3, 2, Fraction(-1, 6)),
        # A half right, a quarter missed, a quarter condemned, which costs as much: 1/2 - 1/4 - 1/4.
        (2, 2, Fraction(0)),
        # A quarter right, three eighths each way: 1/4 - 3/8 - 3/16.
        (4, 1, Fraction(-5, 16)),
    ],
)
def test_a_guessers_mean_before_the_floor(places: int, each: int, mean: Fraction) -> None:
    of = key(places, each)
    answers = every_answer(of)
    assert sum((before_the_floor(of, answer) for answer in answers), Fraction(0)) / len(answers) == mean


@pytest.mark.parametrize(("places", "each"), [(2, 1), (2, 3), (3, 1), (3, 2), (4, 1), (5, 2)])
def test_one_place_for_everything_earns_nothing_where_the_places_are_even(places: int, each: int) -> None:
    of = key(places, each)
    for place in of["places"]:
        assert mark(of, 0, dict.fromkeys(of["units"], place)).mark == 0


def test_with_six_units_in_three_places_a_guesser_earns_less_than_a_twelfth() -> None:
    of = key(3, 2)
    marks = [mark(of, 0, answer).mark for answer in every_answer(of)]
    assert Fraction(sum(marks), len(marks)) < Fraction(1000, 12)
    assert sum(1 for each in marks if each >= 800) == 1, "only the whole answer reaches a pass mark of 80 %"


def test_one_dangerous_unit_takes_the_marks_from_most_guesses() -> None:
    of = key(3, 2, dangerous=1)
    answers = every_answer(of)
    missed = [answer for answer in answers if mark(of, 0, answer).remarks["dangerous"]]
    assert len(missed) * 3 == len(answers) * 2
    assert {mark(of, 0, answer).mark for answer in missed} == {0}

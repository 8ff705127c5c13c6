"""A right number that nobody can type is found before a learner meets it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from journeybook.audit.typeable_numbers import find_untypeable_numbers, why_untypeable
from journeybook.content.loader import load_course
from journeybook.content.model import Bank, Course, NumberQuestion, Outlook, Use
from journeybook.diagnostics.problem import Place

BASE = Path(__file__).parents[2] / "faults" / "base"
HERE = Place(file="quizzes/pillar-drill/extra.yml")
THIRD = NumberQuestion(
    id="third",
    use=Use.PRACTICE,
    outcome="guard-set",
    level=Outlook.APPLY,
    ask="A third of {height}?",
    right="height / 3",
    given=({"height": "6"}, {"height": "7"}),
    place=HERE,
)


def asking(question: NumberQuestion) -> Course:
    course, problems = load_course(BASE, "pillar-drill", profile="uk")
    assert course is not None, problems
    return replace(course, banks=(Bank(id="extra", title="Extra", questions=(question,), place=HERE),))


def test_the_first_variant_that_nobody_can_type_is_named() -> None:
    (problem,) = find_untypeable_numbers(asking(THIRD))
    assert problem.code == "A009"
    assert problem.place == HERE
    assert (
        problem.message == "Nobody can type the right number in row 2 of `given`: it has more than 15 digits."
    )


def test_a_tolerance_or_rounding_mends_it() -> None:
    assert not list(find_untypeable_numbers(asking(replace(THIRD, tolerance="0.1"))))
    assert not list(find_untypeable_numbers(asking(replace(THIRD, right="round(height / 3, 1)"))))


@pytest.mark.parametrize(
    ("low", "high"),
    [
        ("0", "0"),
        ("-7", "-7"),
        ("1.25", "1.25"),
        ("0.125", "0.125"),
        ("1234.125", "1234.125"),
        ("1.2495", "1.2501"),
        ("123456789012345", "123456789012345"),
        ("1/3", "2/3"),
    ],
)
def test_a_number_that_can_be_typed_is_let_be(low: str, high: str) -> None:
    assert why_untypeable(Fraction(low), Fraction(high)) == ""


@pytest.mark.parametrize(
    ("low", "high", "why"),
    [
        ("1.125", "1.125", "with three decimals it may as well mean thousands"),
        ("-12.001", "-12.001", "with three decimals it may as well mean thousands"),
        ("1/3", "1/3", "it has more than 15 digits"),
        ("1234567890123456", "1234567890123456", "it has more than 15 digits"),
    ],
)
def test_a_number_that_cannot_be_typed_is_told_with_its_reason(low: str, high: str, why: str) -> None:
    assert why_untypeable(Fraction(low), Fraction(high)) == why

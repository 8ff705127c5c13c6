from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from journeybook.content.arithmetic import Flaw
from journeybook.content.loader import load_course
from journeybook.content.model import NumberQuestion
from journeybook.content.number_values import given_number, given_rows, read_tolerance, right_values

COURSE = load_course(Path(__file__).parents[2] / "faults" / "base", "pillar-drill", profile="uk")[0]
assert COURSE is not None
SHEETS = {"kit": COURSE.kit.values, "profile": COURSE.profile.values}
QUESTION = COURSE.questions["guard-05"]
assert isinstance(QUESTION, NumberQuestion)


def test_rows_are_numbers_with_kit_values_looked_up() -> None:
    assert given_rows(QUESTION, SHEETS) == [
        {"above": Fraction(40), "gap": Fraction(6)},
        {"above": Fraction("55.5"), "gap": Fraction(5)},
    ]


def test_each_row_has_its_right_value() -> None:
    assert right_values(QUESTION, SHEETS) == [Fraction(34), Fraction("50.5")]


def test_without_rows_there_is_one_right_value() -> None:
    assert right_values(replace(QUESTION, given=(), right="{kit.guard-gap} * 2"), SHEETS) == [Fraction(12)]


@pytest.mark.parametrize(("written", "number"), [("170", 170), ("-5.5", "-5.5"), ("{kit.guard-gap}", 6)])
def test_a_given_number_is_a_number_or_a_reference(written: str, number: int | str) -> None:
    assert given_number(written, SHEETS) == Fraction(number)


@pytest.mark.parametrize("written", ["1 + 1", "six", "{kit.guard-lock}", "{kit.nothing}", ""])
def test_anything_else_is_a_flaw(written: str) -> None:
    assert isinstance(given_number(written, SHEETS), Flaw)


def test_a_question_the_checks_would_refuse_raises() -> None:
    with pytest.raises(ValueError, match="guard-05: It divides by zero"):
        right_values(replace(QUESTION, right="above / (gap - gap)"), SHEETS)


@pytest.mark.parametrize(
    ("text", "right", "around"),
    [("5", 170, "5"), ("0.5", 10, "0.5"), ("3 %", 170, "5.1"), ("3%", -100, "3"), (" 0 ", 7, "0")],
)
def test_a_tolerance_is_a_number_or_a_share_of_the_right_value(text: str, right: int, around: str) -> None:
    tolerance = read_tolerance(text)
    assert tolerance is not None
    assert tolerance.around(Fraction(right)) == Fraction(around)


@pytest.mark.parametrize("text", ["", "about 5", "-5", "5 mm", "3 percent", "1/3", "1e3", "٣"])
def test_a_tolerance_in_any_other_form_is_none(text: str) -> None:
    assert read_tolerance(text) is None

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from journeybook.content.arithmetic import Flaw
from journeybook.content.calculations import Range, folded, range_of, working, written_number
from journeybook.content.loader import load_course
from journeybook.content.postfix import Stopped, work_out_all, work_out_steps

COURSE = load_course(Path(__file__).parents[2] / "faults" / "base", "pillar-drill", profile="uk")[0]
assert COURSE is not None
SHEETS = {"kit": COURSE.kit.values, "profile": COURSE.profile.values}
SPINDLE = COURSE.calculators["spindle-speed"]
READY = working(SPINDLE, SHEETS)


def test_a_range_is_exact_numbers() -> None:
    assert READY.ranges["diameter"] == Range(least=Fraction(1), most=Fraction(20), start=Fraction(10))


def test_choices_make_the_range() -> None:
    speed = READY.ranges["cutting_speed"]
    assert (speed.least, speed.most, speed.choices) == (25, 60, (Fraction(25), Fraction(60)))


def test_a_start_may_be_a_value_of_a_sheet() -> None:
    assert READY.starts == {"cutting_speed": 25, "diameter": 10, "stand_off": 6}


@pytest.mark.parametrize("written", ["{kit.guard-gap}", "{kit.guard-gap.number}", " 6 "])
def test_a_number_is_written_out_or_named(written: str) -> None:
    assert written_number(written, SHEETS) == 6


def test_what_is_no_number_says_so() -> None:
    assert isinstance(written_number("6 mm", SHEETS), Flaw)
    assert range_of(replace(SPINDLE.inputs[1], most="20 mm"), SHEETS) != READY.ranges["diameter"]


def test_values_of_sheets_are_numbers_in_the_steps() -> None:
    assert folded("max(0, stand_off - {kit.guard-gap})", SHEETS) == (
        ("n", "0"),
        ("in", "stand_off"),
        ("n", "6"),
        ("op", "-"),
        ("call", "max", 2),
    )


def test_results_are_worked_out_in_order_and_unrounded() -> None:
    found = READY.results(READY.starts)
    assert found["turns"] == Fraction(25_000) / (Fraction("3.1416") * 10)
    assert found["a_second"] == 13
    assert found["too_far"] == 0


def test_the_corners_are_every_combination_of_the_ends() -> None:
    corners = list(READY.corners())
    assert len(corners) == 8
    assert {"cutting_speed": 60, "diameter": 1, "stand_off": 50} in corners


def test_an_input_of_one_number_has_one_end() -> None:
    assert Range(least=Fraction(3), most=Fraction(3), start=Fraction(3)).ends == (3,)


def test_what_the_loader_refuses_cannot_be_worked() -> None:
    with pytest.raises(ValueError, match=r"spindle-speed: turns"):
        working(replace(SPINDLE, results=(replace(SPINDLE.results[0], formula="1 +"),)), SHEETS)


def test_a_step_that_stops_gives_the_reason() -> None:
    assert work_out_steps([("n", "1"), ("in", "x"), ("op", "/")], {"x": Fraction(0)}) is Stopped.ZERO


def test_a_result_that_lacks_an_earlier_one_stops_for_the_same_reason() -> None:
    programs = [("a", [("n", "1"), ("n", "0"), ("op", "/")]), ("b", [("in", "a")])]
    assert work_out_all(programs, {}) == {"a": Stopped.ZERO, "b": Stopped.ZERO}

"""Which numbers of ``given`` are there for something, and which rows can be told apart."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from journeybook.content.loader import load_course
from journeybook.diagnostics.problem import Problem

BASE = Path(__file__).parents[2] / "faults" / "base"
ASK = "The drill stands {above} mm above the work"


@pytest.fixture
def bank(tmp_path: Path) -> Path:
    shutil.copytree(BASE, tmp_path, dirs_exist_ok=True)
    return tmp_path / "quizzes/pillar-drill/guard.yml"


def change(bank: Path, old: str, new: str) -> None:
    text = bank.read_text(encoding="utf-8")
    assert old in text
    bank.write_text(text.replace(old, new), encoding="utf-8")


def problems_of(bank: Path) -> list[Problem]:
    return load_course(bank.parents[2], "pillar-drill", profile="uk")[1]


def give_speed(bank: Path) -> None:
    change(bank, "{above: ", '{speed: "900", above: ')


def test_a_number_that_nothing_uses_or_shows_is_a_fault(bank: Path) -> None:
    give_speed(bank)
    (problem,) = problems_of(bank)
    assert (problem.code, problem.message) == ("Q042", "The given number `speed` is neither used nor shown.")


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (ASK, "At {speed} turns a minute the drill stands {above} mm above the work"),
        ("{above} less {gap}.", "{above} less {gap}; {speed} turns have nothing to do with it."),
        ('"above + gap"', '"above + speed"'),
        ("The gap stays open; it is not added.", "The gap stays open at {speed} turns as well."),
    ],
    ids=["ask", "why", "the value of a slip", "the reason of a slip"],
)
def test_a_number_may_be_shown_without_being_used(bank: Path, old: str, new: str) -> None:
    give_speed(bank)
    change(bank, old, new)
    assert problems_of(bank) == []


def test_a_number_may_be_used_without_being_shown(bank: Path) -> None:
    change(bank, "the sleeve may end {gap} mm above it", "the sleeve ends where the chart says")
    assert problems_of(bank) == []


def test_rows_that_look_the_same_need_the_same_answer(bank: Path) -> None:
    change(bank, "the sleeve may end {gap} mm above it", "the sleeve ends where the chart says")
    change(bank, '{above: "55.5", gap: "5"}', '{above: "40", gap: "5"}')
    (problem,) = problems_of(bank)
    assert (problem.code, problem.place.trail) == ("Q050", "question guard-05, row 2")
    assert problem.message == "This row shows a learner the same as row 1, but its answer is 35 and not 34."


def test_rows_that_look_the_same_may_have_the_same_answer(bank: Path) -> None:
    change(bank, "the sleeve may end {gap} mm above it", "the sleeve ends where the chart says")
    change(bank, '{above: "55.5", gap: "5"}', '{above: "40", gap: "6"}')
    assert problems_of(bank) == []


@pytest.mark.parametrize("right", ["above - other", "above - ", "1 / 0", "{kit.nothing}"])
def test_an_answer_that_cannot_be_worked_out_is_told_once(bank: Path, right: str) -> None:
    change(
        bank, "{above} mm above the work and the sleeve may end {gap} mm above it", "a little above the work"
    )
    change(bank, 'right: "above - gap"', f'right: "{right}"')
    assert {problem.code for problem in problems_of(bank)} <= {"Q040", "Q043", "W001"}
    assert problems_of(bank)

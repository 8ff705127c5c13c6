"""What nobody would ever come to is told of, what is used in any way is not."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from journeybook.audit.idle_things import find_idle_things
from journeybook.content.assembly import course_from_files
from journeybook.content.model import Course, Use

BASE = Path(__file__).parents[2] / "faults" / "base"
CHART = """\
title: "What the extractor takes"
draw:
  kind: chart
  across: {label: Dust in the bag, unit: "%", from: "0", to: "100"}
  up: {label: Taken, unit: m3/h, from: "0", to: "1000"}
  lines:
    - {name: "gate open", bench: extraction, of: flow, along: load}
"""


def loaded(more: dict[str, str]) -> Course:
    files = {one.relative_to(BASE).as_posix(): one.read_bytes() for one in BASE.rglob("*") if one.is_file()}
    found, problems = course_from_files(
        files | {name: text.encode() for name, text in more.items()},
        "pillar-drill",
        profile="uk",
        course_dir="course_src/pillar-drill",
        quiz_dir="quizzes/pillar-drill",
    )
    assert found is not None, problems
    return found


@pytest.fixture(scope="module")
def course() -> Course:
    return loaded({})


def without_lessons_and_questions(course: Course) -> Course:
    return replace(course, banks=(), modules=tuple(replace(one, lessons=()) for one in course.modules))


def told(course: Course, noun: str) -> list[str]:
    """What is idle of one sort, by name."""
    messages = [problem.message.rstrip(".") for problem in find_idle_things(course)]
    return [message.split(f" the {noun} ")[1] for message in messages if f" the {noun} " in message]


def test_what_lessons_show_and_questions_ask_for_is_not_idle(course: Course) -> None:
    assert not list(find_idle_things(course))


@pytest.mark.parametrize("noun", ["bench", "drill", "calculator", "figure"])
def test_everything_is_idle_in_a_course_that_names_nothing(course: Course, noun: str) -> None:
    bare = replace(without_lessons_and_questions(course), terms={}, job_cards={})
    bare = replace(bare, drills={name: replace(drill, figure="") for name, drill in course.drills.items()})
    there = {
        "bench": bare.benches,
        "drill": bare.drills,
        "calculator": bare.calculators,
        "figure": bare.figures,
    }
    assert told(bare, noun) == list(there[noun])


def test_a_bench_above_a_question_is_not_idle(course: Course) -> None:
    asked = replace(without_lessons_and_questions(course), banks=course.banks)
    assert told(asked, "bench") == ["guard-on"]


def test_a_bench_that_gives_a_line_of_a_chart_is_not_idle() -> None:
    bare = without_lessons_and_questions(loaded({"course_src/pillar-drill/figures/taken.yml": CHART}))
    assert told(bare, "bench") == ["guard-on"]


def test_a_figure_of_a_word_or_of_a_question_is_not_idle(course: Course) -> None:
    asked = replace(course, modules=tuple(replace(one, lessons=()) for one in course.modules))
    named = {term.figure for term in course.terms.values()}
    named |= {question.figure for question in course.questions.values()}
    assert named - {""}
    assert not named & set(told(asked, "figure"))


def test_what_a_retired_question_names_is_not_idle_since_the_question_stays(course: Course) -> None:
    gone = date(2026, 11, 1)
    retired = replace(
        course,
        banks=tuple(
            replace(bank, questions=tuple(replace(one, retired=gone) for one in bank.questions))
            for bank in course.banks
        ),
    )
    assert not told(retired, "drill")


def test_a_practice_question_that_no_lesson_asks_is_idle(course: Course) -> None:
    bare = replace(course, modules=tuple(replace(one, lessons=()) for one in course.modules))
    practice = [one.id for one in course.questions.values() if one.use is Use.PRACTICE]
    assert told(bare, "practice question") == practice


def test_a_check_question_that_no_cell_draws_is_idle_unless_it_asks_a_critical_fact(course: Course) -> None:
    assert course.check is not None
    bare = replace(course, check=replace(course.check, cells=()))
    drawn = [one.id for one in course.questions.values() if one.use is Use.CHECK and not one.critical]
    assert [name.split(" ")[0] for name in told(bare, "question")] == drawn

"""Benches and drills that nobody would ever come to are told of, those that are used in any way are not."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from journeybook.audit.idle_benches import find_idle_benches
from journeybook.audit.idle_drills import find_idle_drills
from journeybook.content.assembly import course_from_files
from journeybook.content.model import Course

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


def test_what_lessons_show_and_questions_ask_for_is_not_idle(course: Course) -> None:
    assert not list(find_idle_benches(course))
    assert not list(find_idle_drills(course))


def test_every_bench_and_drill_without_lessons_and_questions_is_idle(course: Course) -> None:
    bare = without_lessons_and_questions(course)
    assert [problem.place for problem in find_idle_benches(bare)] == [
        bench.place for bench in course.benches.values()
    ]
    assert [problem.code for problem in find_idle_drills(bare)] == ["A020"] * len(course.drills)


def test_a_bench_above_a_question_is_not_idle(course: Course) -> None:
    asked = replace(without_lessons_and_questions(course), banks=course.banks)
    assert ["guard-on" in problem.message for problem in find_idle_benches(asked)] == [True]


def test_a_bench_that_gives_a_line_of_a_chart_is_not_idle() -> None:
    bare = without_lessons_and_questions(loaded({"course_src/pillar-drill/figures/taken.yml": CHART}))
    assert ["guard-on" in problem.message for problem in find_idle_benches(bare)] == [True]

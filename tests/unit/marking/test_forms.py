"""A plan follows from the course, and a form from the plan, a seed and what to avoid."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from pillar_drill import SEVERAL, course, isolate

from journeybook.content.model import Use
from journeybook.marking.draw import arranged, draw_form, plan, questions_in_a_form, shape
from journeybook.marking.keys import lower


def plan_of(of: Any) -> dict[str, Any]:
    found = plan(of, {id_: lower(question, of) for id_, question in of.questions.items()})
    assert found is not None
    return found


def test_the_plan_has_a_gate_for_each_fact_and_a_cell_for_each_line_of_the_blueprint() -> None:
    found = plan_of(course())
    assert found["form-algorithm"] == 1
    assert found["gates"] == [{"fact": "isolate-first", "questions": ["isolate-1", "isolate-2"]}]
    assert found["cells"] == [
        {"outcome": "guard-set", "level": "apply", "draw": 2, "questions": ["set-order", "guard-several"]},
        {"outcome": "speed-set", "level": "recall", "draw": 1, "questions": ["parts-match"]},
        {"outcome": "speed-set", "level": "apply", "draw": 1, "questions": ["speed-number", "height-number"]},
    ]


def test_a_form_has_a_question_for_each_fact_and_as_many_as_the_cells_draw() -> None:
    assert questions_in_a_form(plan_of(course())) == 5


def test_the_plan_says_what_is_shuffled_and_what_must_not_be_shown_in_order() -> None:
    shapes = plan_of(course())["questions"]
    assert shapes["parts-match"] == {
        "kind": "match", "options": ["holds", "covers", "cools"], "shuffle": True, "variants": 1,
    }  # fmt: skip
    assert shapes["speed-number"] == {"kind": "number", "options": [], "shuffle": False, "variants": 2}
    assert len(shapes["set-order"]["before"]) == 10


def test_practice_and_retired_questions_are_never_planned() -> None:
    retired = replace(isolate(2), retired=date(2026, 11, 1))
    practised = replace(isolate(3), use=Use.PRACTICE)
    found = plan_of(course(questions=(isolate(1), retired, practised)))
    assert found["gates"][0]["questions"] == ["isolate-1"]
    assert set(found["questions"]) == {"isolate-1"}


def test_a_critical_question_is_asked_by_its_gate_and_by_no_cell() -> None:
    in_both = replace(SEVERAL, critical="isolate-first")
    found = plan_of(course(questions=(in_both,)))
    assert found["gates"][0]["questions"] == ["guard-several"]
    assert all(cell["questions"] == [] for cell in found["cells"])


def test_a_course_without_a_check_has_no_plan() -> None:
    assert plan(replace(course(), check=None), {}) is None


def test_the_same_seed_gives_the_same_form() -> None:
    found = plan_of(course())
    assert draw_form(found, "s", []) == draw_form(found, "s", [])
    assert draw_form(found, "s", []) != draw_form(found, "t", [])


def test_what_was_asked_before_is_avoided_where_there_is_another() -> None:
    found = plan_of(course())
    for seed in map(str, range(20)):
        asked = {each["q"] for each in draw_form(found, seed, ["isolate-1", "speed-number", "parts-match"])}
        assert asked == {"isolate-2", "height-number", "parts-match", "set-order", "guard-several"}


def test_a_form_does_not_depend_on_the_order_of_files() -> None:
    forward = plan_of(course())
    backward = plan_of(course(questions=tuple(course().questions.values())[::-1]))
    assert draw_form(forward, "s", []) == draw_form(backward, "s", [])


def test_options_stay_in_the_order_of_the_file_where_the_author_wants_it() -> None:
    key = {"kind": "choice", "options": ["a", "b", "c"], "right": "a"}
    assert arranged(shape(key, keep_order=True), "seed", "q") == ["a", "b", "c"]


def test_a_number_has_nothing_to_arrange() -> None:
    key = {
        "kind": "number",
        "unit": "",
        "unit-needed": False,
        "units": {},
        "variants": [{"low": "1", "high": "1"}],
    }
    assert arranged(shape(key, keep_order=False), "seed", "q") == []

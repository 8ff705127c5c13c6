from __future__ import annotations

import json
import re
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from drill_pages import FACTS, drill_course, words_in

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.marking.compiled import compile_course
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.check_page import check_leaf
from journeybook.pages.leaf import Leaf
from journeybook.pages.route_card import route_card_leaf


def leaf_of(course: Course, facts: BuildFacts = FACTS) -> Leaf:
    return check_leaf(course, Wording(course), facts, compile_course(course))


@cache
def leaf() -> Leaf:
    return leaf_of(drill_course())


def check_data() -> dict[str, Any]:
    data = leaf().data["check"]
    assert isinstance(data, dict)
    return data


def certificate(body: str) -> str:
    return body[body.index("data-check-certificate") :]


def test_a_course_without_a_check_has_no_such_leaf() -> None:
    course = replace(drill_course(), check=None)
    with pytest.raises(ValueError, match="course pillar-drill has no check"):
        leaf_of(course)


def test_every_question_that_may_be_drawn_is_a_template_and_no_other() -> None:
    templates = re.findall(r'<template data-check-question="([^"]+)"', leaf().body)
    assert sorted(templates) == sorted(check_data()["plan"]["questions"])


def test_the_data_hold_a_key_and_an_outcome_for_each_of_them() -> None:
    data = check_data()
    assert set(data["keys"]) == set(data["outcomes"]) == set(data["plan"]["questions"])


def test_plan_and_keys_are_those_that_the_digest_covers() -> None:
    content: dict[str, Any] = dict(compile_course(drill_course()).content)
    assert check_data()["plan"] == content["public"]["plan"]
    assert all(content["private"]["keys"][id_] == key for id_, key in check_data()["keys"].items())


def test_references_in_the_titles_of_check_and_lessons_are_replaced() -> None:
    course = drill_course()
    assert course.check is not None
    module = course.modules[0]
    lesson = replace(module.lessons[0], title="A gap of {kit.guard-gap}")
    changed = replace(
        course,
        check=replace(course.check, title="Check of {kit.guard-gap}"),
        modules=(replace(module, lessons=(lesson, *module.lessons[1:])), *course.modules[1:]),
    )
    found = leaf_of(changed)
    gap = Wording(course).value_text(course.kit.values["guard-gap"])
    assert found.title == f"Check of {gap}"
    assert f"<h1>Check of {gap}</h1>" in found.body
    assert f">A gap of {gap}</a>" in found.body
    card = route_card_leaf(changed, Wording(changed), FACTS).body
    assert f"data-route-check>Check of {gap}</a>" in card
    assert "{kit" not in found.body + card


def test_the_data_are_plain_json() -> None:
    assert json.loads(json.dumps(leaf().data)) == leaf().data


def test_the_start_says_what_the_check_is_before_anybody_begins() -> None:
    course = drill_course()
    assert course.check is not None
    words = words_in(leaf().body[: leaf().body.index("data-check-parts")])
    for needed in (
        f"Pass mark {course.check.percent} %",
        "never timed",
        "self-recorded: this page cannot know who answers",
        "You can go back and change any answer until you hand in.",
        "Why this pass mark",
    ):
        assert needed in words
    for fact in course.critical_facts:
        assert words_in(Wording(course).inline(fact.text)) in words


def test_with_scripts_off_a_sentence_says_what_to_do() -> None:
    assert re.search(r"<noscript>.*ask for a paper version", leaf().body, re.DOTALL)


def test_every_outcome_leads_back_to_its_lessons() -> None:
    course = drill_course()
    for outcome in course.outcomes:
        part = re.search(rf'data-outcome="{outcome.id}">.*?</div>', leaf().body, re.DOTALL)
        assert part
        linked = re.findall(r'href="page:lesson/([^"]+)"', part[0])
        assert linked == [lesson.id for lesson in course.lessons if outcome.id in lesson.outcomes]


def test_every_id_starts_with_the_slug_and_comes_once() -> None:
    ids = re.findall(r'\bid="([^"]+)"', leaf().body)
    assert [id_ for id_ in ids if not id_.startswith("check")] == []
    assert len(set(ids)) == len(ids)


def test_the_certificate_never_says_that_anybody_is_competent() -> None:
    said = words_in(certificate(leaf_of(replace(drill_course(), cautions=())).body)).lower()
    assert "competent" not in said
    assert "knowledge check only" in said
    assert "not observed" in said
    assert "self-recorded: nobody confirmed who answered." in said


def test_the_certificate_names_what_it_does_not_prove_and_the_cautions() -> None:
    course = drill_course()
    said = words_in(certificate(leaf().body))
    for text in (*course.certificate_limits, *course.cautions):
        assert words_in(Wording(course).inline(text)) in said


def test_a_draft_says_so_on_the_certificate_and_a_release_does_not() -> None:
    course = drill_course()
    words = "Draft: this course is not released"
    assert words in certificate(leaf_of(course, replace(FACTS, draft=True)).body)
    assert words not in certificate(leaf_of(course, replace(FACTS, draft=False)).body)


def test_an_example_unit_is_named_as_not_valid_for_work_while_any_value_is_invented() -> None:
    course = drill_course()
    words = "Example unit: not valid for work"
    value = next(iter(course.kit.values.values()))
    for example in (True, False):
        kit = replace(course.kit, values={value.id: replace(value, example=example)})
        # Texts may name the other values, so only the certificate's own words are compared.
        wording = Wording(course)
        changed = replace(course, kit=kit)
        body = check_leaf(changed, wording, FACTS, compile_course(course)).body
        assert (words in certificate(body)) is example


def test_the_script_finds_every_slot_it_fills() -> None:
    slots = set(re.findall(r'data-slot="([^"]+)"', leaf().body))
    assert slots == {
        "attempt", "day", "digest", "digest-short", "fingerprint", "language", "marks", "must-pass", "name",
        "passed", "retrain", "workplace",
    }  # fmt: skip


def test_a_check_with_drills_says_that_they_are_gone_through_once() -> None:
    assert "it is gone through once" in leaf().body
    without = tuple(
        replace(bank, questions=tuple(one for one in bank.questions if one.kind != "drill"))
        for bank in drill_course().banks
    )
    assert "it is gone through once" not in leaf_of(replace(drill_course(), banks=without)).body

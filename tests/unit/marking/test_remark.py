"""A record is marked again from its raw answers, or what is wrong with it is said."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest
from pillar_drill import HEIGHT, JAM, MATCH, SEVERAL, course, isolate

from journeybook.content.model import Use
from journeybook.diagnostics.problem import Level, Place
from journeybook.marking import canonical
from journeybook.marking.attempt import Asked, Attempt, Card, to_json, write
from journeybook.marking.compiled import compile_course
from journeybook.marking.draw import draw_form
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.remark import Marker, re_mark
from journeybook.remarking import Outcome

COMPILED = compile_course(course())
PLAN: Any = COMPILED.content["public"]["plan"]  # type: ignore[index, call-overload]
RIGHT: dict[str, Any] = {
    "isolate-1": "a",
    "isolate-2": "a",
    "set-order": ["isolate", "loosen", "slide", "tighten", "start"],
    "guard-several": ["crack", "screw", "bent"],
    "parts-match": {"collar": "holds", "sleeve": "covers"},
    "height-number": {"value": "6", "unit": "mm"},
}
SEED = next(
    seed
    for seed in map(str, range(99))
    if "height-number" in {each["q"] for each in draw_form(PLAN, seed, [])}
)


def an_attempt(**changes: Any) -> Attempt:
    form = draw_form(PLAN, SEED, [])
    attempt = Attempt(
        course="pillar-drill",
        version="1.0",
        digest=COMPILED.digest,
        profile="uk",
        language="en",
        seed=SEED,
        avoid=(),
        form=tuple(
            Asked(question=each["q"], variant=each["variant"], options=tuple(each["options"]))
            for each in form
        ),
        answers={each["q"]: RIGHT[each["q"]] for each in form},
        shown=tuple(each["q"] for each in form),
        started="2026-11-24T09:00:00Z",
        ended="2026-11-24T09:20:00Z",
        card=Card(id="c-1", name="R. Adeyemi-Holt", workplace="Quillon Basin Works"),
    )
    return replace(attempt, **changes)


def said(data: bytes, compiled: bytes = COMPILED.data) -> list[tuple[str, str]]:
    found = re_mark(data, compiled, "attempt.json")
    assert found.result is None
    assert found.remarks == {}
    assert {problem.place.file for problem in found.problems} == {"attempt.json"}
    return [(problem.code, problem.message) for problem in found.problems]


def edited(**members: Any) -> bytes:
    """The bytes of an attempt with some members replaced by whatever."""
    return canonical.write({**to_json(an_attempt()), **members})


def test_a_whole_record_is_marked() -> None:
    data = write(an_attempt())
    found = re_mark(data, COMPILED.data)
    assert found.problems == ()
    assert found.fingerprint == fingerprint(data)
    assert found.result is not None
    assert (found.result["marks"], found.result["passed"]) == (5000, True)
    assert found.remarks["height-number"] == {"kind": "number", "read": "6", "problem": ""}


def test_a_question_left_out_earns_nothing_and_is_no_problem() -> None:
    answers = {
        question: answer for question, answer in an_attempt().answers.items() if question != "set-order"
    }
    found = re_mark(write(an_attempt(answers=answers)), COMPILED.data)
    assert found.problems == ()
    assert found.result is not None
    assert found.result["questions"]["set-order"] == 0


def test_a_file_that_is_no_json() -> None:
    assert said(b"PK\x03\x04") == [
        (
            "M001",
            "This was read as the record of a check, which is JSON, and it is none: line 1, column 1: expecting value.",
        )
    ]


def test_a_file_in_another_encoding() -> None:
    assert said("Ü".encode("utf-16")) == [
        (
            "M001",
            "This was read as the record of a check, which is JSON, and it is none: byte 1 is not UTF-8.",
        )
    ]


def test_a_file_that_is_too_large() -> None:
    assert said(b" " * (2**20 + 1)) == [("M002", "The file is larger than 1048576 bytes.")]


def test_a_file_that_is_nested_too_deeply() -> None:
    assert said(b"[" * 40 + b"]" * 40) == [("M002", "Lists and objects are nested more than 32 deep.")]


def test_a_file_with_a_fraction() -> None:
    assert said(b'{"a":1.5}') == [("M003", "1.5 is not an integer.")]


def test_a_file_with_a_key_twice() -> None:
    assert said(b'{"a":1,"a":1}') == [("M003", "The key “a” stands twice in one object.")]


def test_a_file_that_an_editor_has_indented() -> None:
    data = json.dumps(to_json(an_attempt()), indent=1).encode()
    assert said(data) == [("M004", "The bytes differ from the canonical form of their contents.")]


@pytest.mark.parametrize("data", [b"[]", b"{}", b'{"format":"journeybook attempt 2"}'])
def test_a_record_of_another_kind(data: bytes) -> None:
    assert said(data) == [("M005", "The file does not say that it is a “journeybook attempt 1”.")]


def test_a_record_without_a_member() -> None:
    record = to_json(an_attempt())
    del record["seed"]
    record["score"] = 5000
    assert said(canonical.write(record)) == [
        ("M006", "These members are missing, or should not be there: score, seed.")
    ]


@pytest.mark.parametrize(
    ("member", "value", "shape"),
    [
        pytest.param("seed", "", "a short text that is not empty", id="an empty seed"),
        pytest.param("version", 1, "a short text that is not empty", id="a version that is a number"),
        pytest.param("course", "a" * 1001, "a short text that is not empty", id="an endless course"),
        pytest.param("digest", "0" * 63, "64 hexadecimal digits", id="a short digest"),
        pytest.param("digest", "A" * 64, "64 hexadecimal digits", id="a digest in capitals"),
        pytest.param("avoid", ["a", "a"], "a list of different ids", id="an id twice"),
        pytest.param("shown", "a", "a list of different ids", id="a text for a list"),
        pytest.param("shown", [["a"]], "a list of different ids", id="a list in a list"),
        pytest.param("answers", [], "a mapping of question ids to answers", id="answers in a list"),
        pytest.param(
            "form", {}, "a list of questions, each with q, variant and options", id="a form that is no list"
        ),
        pytest.param(
            "form",
            [{"q": "a"}],
            "a list of questions, each with q, variant and options",
            id="half a question",
        ),
        pytest.param(
            "form",
            [{"q": "a", "variant": True, "options": []}],
            "a list of questions, each with q, variant and options",
            id="a variant that is no number",
        ),
        pytest.param("card", {"id": "a"}, "id, name and workplace, each a short text", id="half a card"),
        pytest.param(
            "card",
            {"id": "a", "name": 1, "workplace": ""},
            "id, name and workplace, each a short text",
            id="no name",
        ),
        pytest.param(
            "started", "24.11.2026", "a time such as 2026-11-24T09:00:00Z", id="another way to write a time"
        ),
        pytest.param(
            "ended", "2026-02-30T09:00:00Z", "a time such as 2026-11-24T09:00:00Z", id="a day that never was"
        ),
    ],
)
def test_a_member_of_the_wrong_shape(member: str, value: Any, shape: str) -> None:
    assert said(edited(**{member: value})) == [("M006", f"The member “{member}” is not {shape}.")]


def test_a_question_on_the_screen_that_was_not_asked() -> None:
    data = edited(shown=["flow-99"])
    assert said(data) == [("M006", "The member “shown” names “flow-99”, which the form does not ask.")]


@pytest.mark.parametrize(
    ("member", "value", "here"),
    [("course", "lathe", "pillar-drill"), ("version", "0.9", "1.0"), ("profile", "us", "uk")],
)
def test_a_record_of_something_else(member: str, value: str, here: str) -> None:
    assert said(edited(**{member: value})) == [
        ("M007", f"The record is of {member} “{value}”, this course of “{here}”.")
    ]


def test_a_record_in_a_language_that_the_course_does_not_have() -> None:
    assert said(edited(language="cy")) == [
        ("M007", "The record is in language “cy”, which the compiled course does not have.")
    ]


def test_a_record_made_with_other_contents() -> None:
    other = compile_course(replace(course(), title="Other"))
    assert said(write(an_attempt()), other.data) == [
        (
            "M008",
            f"The record was made with contents {COMPILED.digest[:16]}…, "
            f"this course is {other.digest[:16]}….",
        )
    ]


@pytest.mark.parametrize(
    "changes",
    [
        pytest.param({"seed": "an easier one"}, id="another seed"),
        pytest.param({"avoid": ("isolate-1", "isolate-2", "height-number")}, id="other questions to avoid"),
        pytest.param({"form": an_attempt().form[::-1]}, id="another order of asking"),
        pytest.param({"form": an_attempt().form[:-1]}, id="a question less"),
        pytest.param(
            {"form": (replace(an_attempt().form[0], options=("a",)), *an_attempt().form[1:])},
            id="other options",
        ),
        pytest.param(
            {"form": (replace(an_attempt().form[0], variant=1), *an_attempt().form[1:])}, id="another variant"
        ),
    ],
)
def test_a_form_that_its_seed_does_not_give(changes: Any) -> None:
    message = "The questions, their order or the order of their options are not what the record's seed gives."
    assert said(write(an_attempt(**changes))) == [("M009", message)]


def test_an_answer_to_a_question_that_was_not_asked() -> None:
    data = edited(answers={**an_attempt().answers, "flow-99": "a"})
    assert said(data) == [("M010", "There is an answer to “flow-99”, which the form does not ask.")]


def test_an_answer_that_the_question_cannot_have() -> None:
    data = edited(answers={**an_attempt().answers, "set-order": ["isolate"]})
    assert said(data) == [("M010", "The answer to “set-order” is not one that the question can have.")]


def test_a_record_that_ended_before_it_began_is_marked_with_a_warning() -> None:
    found = re_mark(edited(ended="2026-11-24T08:59:59Z"), COMPILED.data)
    assert found.result == re_mark(write(an_attempt()), COMPILED.data).result
    assert found.remarks
    assert [(problem.level, problem.code, problem.message) for problem in found.problems] == [
        (
            Level.WARNING,
            "M011",
            "The record ended at 2026-11-24T08:59:59Z, before it began at 2026-11-24T09:00:00Z.",
        )
    ]


def test_a_clock_set_back_does_not_hide_what_keeps_a_record_from_being_marked() -> None:
    assert [code for code, _ in said(edited(ended="2026-11-24T08:59:59Z", version="0.9"))] == ["M007"]


def test_a_problem_with_a_record_shows_no_line_of_it() -> None:
    places = {problem.place for problem in re_mark(b"{}", COMPILED.data, "returned.json").problems}
    assert places == {Place(file="returned.json", length=0)}


@pytest.mark.parametrize(
    "compiled",
    [
        pytest.param(b"", id="nothing"),
        pytest.param(b"{}", id="something else"),
        pytest.param(COMPILED.data + b"\n", id="saved by an editor"),
        pytest.param(b'{"format":"journeybook compiled course 1"}', id="only the head of a course"),
        pytest.param(
            COMPILED.data.replace(b'"form-algorithm":1', b'"form-algorithm":2'), id="another way of drawing"
        ),
        pytest.param(compile_course(replace(course(), check=None)).data, id="a course without a check"),
    ],
)
def test_contents_that_cannot_be_marked_by(compiled: bytes) -> None:
    message = "The contents to mark by are not a compiled course with a check, of a format known here."
    assert said(write(an_attempt()), compiled) == [("M012", message)]


def test_a_marker_marks_many_records_as_each_would_be_marked_alone() -> None:
    marker = Marker(COMPILED.data)
    files = [write(an_attempt()), write(an_attempt(answers={})), b"no record", edited(version="0.9")]
    assert [marker.re_mark(data) for data in files] == [re_mark(data, COMPILED.data) for data in files]


def test_everything_that_is_wrong_is_said_at_once() -> None:
    data = edited(course="lathe", version="0.9", digest="0" * 64)
    assert [code for code, _ in said(data)] == ["M007", "M007", "M008"]


def test_a_made_up_file_is_not_answered_with_a_problem_for_each_of_its_lines() -> None:
    strays = {f"{'x' * 500}-{number}": "a" for number in range(1500)}
    problems = said(write(an_attempt(answers=strays)))
    assert len(problems) == 20
    assert all(len(message) < 150 for _, message in problems)


def test_a_made_up_member_is_named_in_short() -> None:
    record = to_json(an_attempt()) | {"y" * 5000: 1}
    assert said(canonical.write(record)) == [
        ("M006", f"These members are missing, or should not be there: {'y' * 40}.")
    ]


def drilled(deeds: list[str]) -> Outcome:
    """What comes of a check with a drill, in which everything else is right."""
    jam = replace(JAM, use=Use.CHECK)
    compiled = compile_course(course(questions=(isolate(1), isolate(2), jam, SEVERAL, MATCH, HEIGHT)))
    plan: Any = compiled.content["public"]["plan"]  # type: ignore[index, call-overload]
    form = draw_form(plan, SEED, [])
    attempt = an_attempt(
        digest=compiled.digest,
        form=tuple(
            Asked(question=each["q"], variant=each["variant"], options=tuple(each["options"]))
            for each in form
        ),
        answers={each["q"]: RIGHT.get(each["q"], deeds) for each in form},
        shown=tuple(each["q"] for each in form),
    )
    found = re_mark(write(attempt), compiled.data)
    assert found.problems == ()
    return Outcome(fingerprint=found.fingerprint, attempt=found.attempt, result=found.result)


def test_a_critical_error_in_a_drill_fails_a_check_with_marks_enough() -> None:
    outcome = drilled(["hold"])
    assert outcome.result is not None
    assert (outcome.result["marks"], outcome.result["cut"]) == (4000, 4000)
    assert outcome.result["critical"] == ["jam-drill"]
    assert not outcome.result["passed"]
    assert "not yet passed" in outcome.as_text()
    assert "Drill        jam-drill: a critical error, which fails the check\n" in outcome.as_text()


def test_a_penalty_in_a_drill_costs_marks_only() -> None:
    outcome = drilled(["lift"])
    assert outcome.result is not None
    assert (outcome.result["marks"], outcome.result["critical"], outcome.result["passed"]) == (4600, [], True)
    assert "Drill " not in outcome.as_text()


def test_deeds_that_the_drill_does_not_have_are_no_answer_to_it() -> None:
    with pytest.raises(AssertionError, match="M010"):
        drilled(["stop", "stop"])

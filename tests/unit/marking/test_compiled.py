"""The same course gives the same bytes, and each change shows in the digest that covers it."""

from __future__ import annotations

import hashlib
import json
from dataclasses import replace
from typing import Any

import pytest
from pillar_drill import HEIGHT, ORDER, SEVERAL, SPEED, course

from journeybook.marking import canonical
from journeybook.marking.compiled import compile_course


def content(of: Any = None) -> Any:
    return json.loads(compile_course(of or course()).data)


def digests(of: Any) -> Any:
    return json.loads(compile_course(of).digests)


def test_the_bytes_are_canonical_and_their_digest_is_their_sha_256() -> None:
    made = compile_course(course())
    assert canonical.read(made.data) == made.content
    assert made.digest == hashlib.sha256(made.data).hexdigest()


def test_compiling_twice_gives_the_same_bytes() -> None:
    assert compile_course(course()).data == compile_course(course()).data


def test_it_names_format_course_version_profile_and_languages() -> None:
    found = content()
    head = {name: found[name] for name in ("format", "course", "version", "profile", "languages")}
    assert head == {
        "format": "journeybook compiled course 1",
        "course": "pillar-drill",
        "version": "1.0",
        "profile": "uk",
        "languages": ["en"],
    }


def test_the_cut_counts_a_thousand_for_each_question_of_a_form() -> None:
    assert content()["public"]["cut"] == {"percent": 80, "of": 5000}


def test_a_course_without_a_check_has_neither_cut_nor_plan() -> None:
    public = content(replace(course(), check=None))["public"]
    assert (public["cut"], public["plan"]) == (None, None)


def test_the_public_part_of_a_question_does_not_tell_the_answer() -> None:
    assert content()["public"]["questions"]["guard-several"] == {
        "kind": "choices",
        "use": "check",
        "outcome": "guard-set",
        "level": "apply",
        "critical": "",
        "figure": "",
        "options": ["crack", "dust", "screw", "bent", "old"],
        "texts": {
            "en": {
                "ask": ["Which of these send a guard back to the store?"],
                "options": {
                    "crack": "A crack across the sleeve",
                    "dust": "Dust on the sleeve",
                    "screw": "A missing screw",
                    "bent": "A bent collar",
                    "old": "A faded label",
                },
            }
        },
    }


def test_every_reason_is_private() -> None:
    found = content()
    shown = json.dumps(found["public"])
    for question in course().questions.values():
        if question.why and "{" not in question.why:
            assert question.why not in shown
    assert found["private"]["reasons"]["guard-several"]["en"]["options"] == {
        "dust": "Wipe it off.",
        "old": "Order a label.",
    }


def test_each_variant_is_asked_with_its_own_numbers() -> None:
    assert content()["public"]["questions"]["speed-number"]["texts"]["en"]["ask"] == [
        "A 10 mm bit may cut at 25 m/min. How fast may the spindle turn? Take 3.14 for pi.",
        "A 6 mm bit may cut at 25 m/min. How fast may the spindle turn? Take 3.14 for pi.",
    ]


def test_references_in_lessons_are_replaced() -> None:
    texts = content()["public"]["lessons"]["set-guard"]["texts"]["en"]
    assert texts == {
        "title": "Set the guard",
        "body": [
            {"kind": "text", "text": "The collar holds the sleeve."},
            {"kind": "steps", "steps": ["Isolate.", "Loosen."]},
            {"kind": "figure", "text": "guard"},
        ],
    }


def test_one_spelling_has_one_digest() -> None:
    composed = replace(course(), title="Schu\u0308tz")
    assert compile_course(composed).digest == compile_course(replace(course(), title="Sch\u00fctz")).digest


def test_a_text_that_has_no_bytes_is_refused() -> None:
    with pytest.raises(canonical.NotCanonical) as raised:
        compile_course(replace(course(), title="\ud800"))
    assert raised.value.reason == "surrogate"


@pytest.mark.parametrize(
    "changed",
    [
        pytest.param(replace(HEIGHT, tolerance="2"), id="its key"),
        pytest.param(replace(HEIGHT, ask="How high?"), id="its text"),
        pytest.param(replace(HEIGHT, why="Because."), id="its reason"),
    ],
)
def test_a_changed_question_shows_in_the_course_and_in_its_own_digest_only(changed: Any) -> None:
    before = course(questions=(ORDER, SEVERAL, HEIGHT))
    after = course(questions=(ORDER, SEVERAL, changed))
    assert compile_course(before).digest != compile_course(after).digest
    differs = {
        id_
        for id_, digest in digests(after)["questions"].items()
        if digest != digests(before)["questions"][id_]
    }
    assert differs == {"height-number"}


def test_the_digest_of_the_texts_covers_texts_and_not_keys() -> None:
    before = course(questions=(HEIGHT, SPEED))
    other_key = course(questions=(replace(HEIGHT, tolerance="2"), SPEED))
    other_text = course(questions=(replace(HEIGHT, ask="How high?"), SPEED))
    assert digests(before)["texts"] == digests(other_key)["texts"]
    assert digests(before)["texts"] != digests(other_text)["texts"]

"""The same course gives the same bytes, and each change shows in the digest that covers it."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from datetime import date, timedelta
from enum import Enum
from typing import Any

import pytest
from pillar_drill import DRILL, FILL, HEIGHT, HERE, JAM, MOUTH, ORDER, SEVERAL, SPEED, course

from journeybook.content.model import Citation, Confirmation, Course, Stand, Standing
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
        "source": [],
        "options": ["crack", "dust", "screw", "bent", "old"],
        "keep-order": False,
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


def test_what_a_deed_leads_to_is_private() -> None:
    found = content()
    shown = json.dumps(found["public"]["drills"])
    assert "Hit the stop" in shown
    for hidden in ("It runs down.", "It breaks the wrist.", "penalty", "late"):
        assert hidden not in shown
    assert found["private"]["drills"]["drill-jams"]["late"] == {"jam": "hold"}
    assert found["private"]["drills"]["drill-jams"]["texts"]["en"] == {
        "told": {"stop": "It runs down.", "lift": "Late."},
        "critical": {"hold": "It breaks the wrist."},
    }


def test_a_changed_drill_shows_in_the_digest_of_the_question_that_leads_through_it() -> None:
    first, *others = DRILL.moments
    told = replace(first, deeds=(replace(first.deeds[0], told="It stops."), *first.deeds[1:]))
    before = course(questions=(HEIGHT, JAM))
    after = replace(before, drills={DRILL.id: replace(DRILL, moments=(told, *others))})
    differs = {
        id_ for id_, one in digests(after)["questions"].items() if one != digests(before)["questions"][id_]
    }
    assert differs == {"jam-drill"}


@pytest.mark.parametrize(
    "changed",
    [
        pytest.param(
            replace(FILL, trial=replace(FILL.trial, start=Stand(load="20"))), id="where its trial starts"
        ),
        pytest.param(replace(FILL, trial=replace(FILL.trial, hides=("opening",))), id="what its trial hides"),
        pytest.param(replace(FILL, goals=(replace(FILL.goals[0], below="401"),)), id="its goal"),
        pytest.param(replace(FILL, near=1), id="how near counts"),
        pytest.param(replace(FILL, first="", last="load"), id="which of the places counts"),
    ],
)
def test_whatever_is_changed_of_a_setting_shows_in_its_own_digest_only(changed: Any) -> None:
    before, after = course(questions=(ORDER, FILL)), course(questions=(ORDER, changed))
    differs = {
        id_ for id_, one in digests(after)["questions"].items() if one != digests(before)["questions"][id_]
    }
    assert differs == {FILL.id}


def test_the_goal_of_a_setting_is_private() -> None:
    found = content(course(questions=(FILL,)))
    assert "goal" not in json.dumps(found["public"]["questions"])
    assert found["private"]["reasons"][FILL.id]["en"]["setting"]["goals"][0]["below"] == "400"
    assert found["private"]["keys"][FILL.id]["accepted"]


def test_a_changed_bench_shows_in_the_digest_of_the_question_below_it() -> None:
    before = course(questions=(ORDER, FILL))
    after = replace(before, benches={**before.benches, MOUTH.id: replace(MOUTH, standby="3")})
    differs = {
        id_ for id_, one in digests(after)["questions"].items() if one != digests(before)["questions"][id_]
    }
    assert differs == {FILL.id}


def test_the_digest_of_the_texts_covers_texts_and_not_keys() -> None:
    before = course(questions=(HEIGHT, SPEED))
    other_key = course(questions=(replace(HEIGHT, tolerance="2"), SPEED))
    other_text = course(questions=(replace(HEIGHT, ask="How high?"), SPEED))
    assert digests(before)["texts"] == digests(other_key)["texts"]
    assert digests(before)["texts"] != digests(other_text)["texts"]


def cited_course() -> Course:
    """The course with a source that somebody checked, and everything that may be left out filled in."""
    checked = Confirmation(by="T. Marrable", on=date(2026, 11, 20), edition="2")
    manual = Citation(
        id="manual",
        title="Drill manual",
        clause="4",
        year="2020",
        standing=Standing.REPORTED,
        confirmed=checked,
        place=HERE,
    )
    bare = course()
    speed = replace(
        bare.kit.values["cutting-speed"],
        note="Mild steel.",
        sources=("manual",),
        page="12",
        confirmed=checked,
    )
    return replace(
        bare,
        sources={"manual": manual},
        kit=replace(bare.kit, values={"cutting-speed": speed}),
        profile=replace(bare.profile, values={"cutting-speed": speed}),
        validity=replace(bare.validity, sources=("manual",)),
    )


NEVER_SHOWN = {"place", "draft", "unfinished", "only", "banks"}
"""Where a thing stands and how far it is; questions have tests of their own."""
WITHOUT_MEANING = {
    ".kit.id",
    ".duties.id",
    ".modules.0.lessons.0.body.1.text",
    ".calculators.spindle-speed.inputs.0.least",
    ".calculators.spindle-speed.inputs.0.most",
}
"""The kit sheet is always called so, duties like their profile, a block of steps has no text, choices have no range."""


def changes(thing: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Each way to change one thing within ``thing``: where, and the whole with that change."""
    match thing:
        case bool():
            yield path, not thing
        case Enum():
            yield path, next(other for other in type(thing) if other is not thing)
        case str():
            yield path, str(int(thing) + 1) if thing.isdecimal() else f"{thing}-x"
        case int():
            yield path, thing + 1
        case date():
            yield path, thing + timedelta(days=1)
        case None:
            return
        case dict():
            for key, value in thing.items():
                for where, changed in changes(value, f"{path}.{key}"):
                    yield where, {**thing, key: changed}
        case tuple():
            if thing and isinstance(thing[0], str):
                yield path, (*thing, "x")
            for index, value in enumerate(thing):
                for where, changed in changes(value, f"{path}.{index}"):
                    yield where, (*thing[:index], changed, *thing[index + 1 :])
        case _ if is_dataclass(thing):
            for each in fields(thing):
                at = f"{path}.{each.name}"
                if each.name not in NEVER_SHOWN and at not in WITHOUT_MEANING:
                    for where, changed in changes(getattr(thing, each.name), at):
                        yield where, replace(thing, **{each.name: changed})  # type: ignore[type-var]


EVERY_CHANGE = dict(changes(cited_course()))


def test_the_changes_reach_every_part_of_a_course() -> None:
    assert {
        ".validity.months",
        ".validity.sources",
        ".contact.reach",
        ".check.title",
        ".check.minutes",
        ".modules.0.summary",
        ".modules.0.lessons.0.practice",
        ".kit.values.cutting-speed.confirmed.on",
        ".sources.manual.standing",
        ".approved.by",
        ".drills.drill-jams.moments.0.late",
        ".practicals.guard-watched.steps.0.critical",
        ".job_cards.before.body.1.table.rows.0",
        ".duties.duties.0.covered_by.job_cards",
        ".drills.drill-jams.moments.0.deeds.1.told",
        ".calculators.spindle-speed.inputs.1.places",
        ".calculators.spindle-speed.results.0.formula",
        ".benches.guard-on.parts.2.size.wide",
        ".benches.guard-on.rules.0.critical",
    } <= EVERY_CHANGE.keys()


@pytest.mark.parametrize("where", EVERY_CHANGE)
def test_the_digest_covers_whatever_is_shown(where: str) -> None:
    assert compile_course(EVERY_CHANGE[where]).digest != compile_course(cited_course()).digest


def test_a_modules_lessons_are_covered_in_their_order() -> None:
    bare = course()
    (module,) = bare.modules
    (first,) = module.lessons
    second = replace(first, id="again")
    one_way = replace(bare, modules=(replace(module, lessons=(first, second)),))
    other_way = replace(bare, modules=(replace(module, lessons=(second, first)),))
    assert compile_course(one_way).digest != compile_course(other_way).digest


@pytest.mark.parametrize(
    "where",
    [
        ".title",
        ".cautions.0",
        ".validity.grounds",
        ".check.title",
        ".modules.0.title",
        ".kit.values.cutting-speed.label",
        ".profile.title",
        ".critical_facts.0.why",
        ".terms.collar.meaning",
        ".figures.guard.alt",
        ".drills.drill-jams.situation",
        ".calculators.spindle-speed.caution",
        ".calculators.spindle-speed.inputs.0.choices.1.label",
        ".drills.drill-jams.moments.0.deeds.2.critical",
    ],
)
def test_the_digest_of_the_texts_covers_the_texts_around_the_questions(where: str) -> None:
    assert digests(EVERY_CHANGE[where])["texts"] != digests(cited_course())["texts"]

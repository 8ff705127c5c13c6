"""Questions that are pointed at or sorted, as keys and as parts of a compiled course."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest
from pillar_drill import BANK, course, option

from journeybook.content.model import (
    Outlook,
    Question,
    Spot,
    SpotQuestion,
    TriageQuestion,
    TriageUnit,
    Use,
)
from journeybook.marking.compiled import compile_course
from journeybook.marking.draw import keeps_order, shape
from journeybook.marking.keys import lower

SPOT = SpotQuestion(
    id="point",
    use=Use.CHECK,
    outcome="guard-set",
    level=Outlook.APPLY,
    figure="guard",
    ask="Point at what slides.",
    spots=(
        Spot(id="sleeve", text="The sleeve", part="sleeve", place=BANK),
        Spot(id="collar", text="The collar", part="collar", reason="It is clamped.", place=BANK),
    ),
    right="sleeve",
    place=BANK,
)
TRIAGE = TriageQuestion(
    id="sort",
    use=Use.CHECK,
    outcome="guard-set",
    level=Outlook.APPLY,
    ask="What is done with each?",
    places=(option("use", "Use it"), option("tag", "Tag it out")),
    units=(
        TriageUnit(id="d1", text="Whole", belongs="use", reason="Nothing is wrong.", place=BANK),
        TriageUnit(
            id="d2",
            text="Cracked",
            belongs="tag",
            dangerous=True,
            figure="guard",
            reason="It gives.",
            place=BANK,
        ),
    ),
    place=BANK,
)


def compiled(*questions: Question) -> Any:
    return json.loads(compile_course(course(questions=questions)).data)


def digest(question: Question) -> str:
    found: str = json.loads(compile_course(course(questions=(question,))).digests)["questions"][question.id]
    return found


def test_a_spots_key_is_its_ids_and_the_right_one() -> None:
    assert lower(SPOT, course()) == {"kind": "spot", "spots": ["sleeve", "collar"], "right": "sleeve"}


def test_a_triages_key_says_where_each_unit_belongs_and_which_are_dangerous() -> None:
    assert lower(TRIAGE, course()) == {
        "kind": "triage",
        "places": ["use", "tag"],
        "units": ["d1", "d2"],
        "right": {"d1": "use", "d2": "tag"},
        "dangerous": ["d2"],
        "whole": False,
    }


def test_a_triage_that_asks_a_critical_fact_is_all_or_nothing() -> None:
    assert lower(replace(TRIAGE, critical="isolate-first"), course())["whole"] is True


@pytest.mark.parametrize("question", [SPOT, TRIAGE], ids=lambda question: question.kind)
@pytest.mark.parametrize("kept", [False, True])
def test_what_is_offered_is_shuffled_unless_its_author_keeps_the_order(
    question: SpotQuestion | TriageQuestion, kept: bool
) -> None:
    question = replace(question, keep_order=kept)
    found = shape(lower(question, course()), keeps_order(question))
    assert found["options"] == [each.id for each in question.offered]
    assert found["shuffle"] is not kept


def test_the_public_part_holds_what_is_shown_and_not_what_is_right() -> None:
    public = compiled(SPOT, TRIAGE)["public"]["questions"]
    assert public["point"]["parts"] == {"sleeve": "sleeve", "collar": "collar"}
    assert public["sort"]["figures"] == {"d2": "guard"}
    assert public["sort"]["texts"]["en"] == {
        "ask": ["What is done with each?"],
        "options": {"d1": "Whole", "d2": "Cracked"},
        "places": {"use": "Use it", "tag": "Tag it out"},
    }
    assert "dangerous" not in json.dumps(public)


def test_the_reasons_are_private() -> None:
    reasons = compiled(SPOT, TRIAGE)["private"]["reasons"]
    assert reasons["point"]["en"]["options"] == {"collar": "It is clamped."}
    assert reasons["sort"]["en"]["options"] == {"d1": "Nothing is wrong.", "d2": "It gives."}


def changed_spot(**change: Any) -> SpotQuestion:
    return replace(SPOT, spots=(replace(SPOT.spots[0], **change), SPOT.spots[1]))


def changed_unit(**change: Any) -> TriageQuestion:
    return replace(TRIAGE, units=(TRIAGE.units[0], replace(TRIAGE.units[1], **change)))


@pytest.mark.parametrize(
    "changed",
    [
        pytest.param(changed_spot(text="The tube"), id="what a spot is called"),
        pytest.param(changed_spot(part="tube"), id="a part"),
        pytest.param(changed_spot(reason="It slides."), id="the reason of a spot"),
        pytest.param(replace(SPOT, right="collar"), id="the right spot"),
        pytest.param(replace(SPOT, keep_order=True), id="the order of spots"),
        pytest.param(replace(SPOT, figure=""), id="the drawing"),
        pytest.param(changed_unit(text="Bent"), id="a condition"),
        pytest.param(changed_unit(belongs="use"), id="where a unit belongs"),
        pytest.param(changed_unit(dangerous=False), id="whether a unit is dangerous"),
        pytest.param(changed_unit(figure=""), id="the figure of a unit"),
        pytest.param(changed_unit(reason="It tears."), id="the reason of a unit"),
        pytest.param(
            replace(TRIAGE, places=(replace(TRIAGE.places[0], text="Take it"), TRIAGE.places[1])),
            id="a place",
        ),
        pytest.param(replace(TRIAGE, places=TRIAGE.places[::-1]), id="the order of places"),
        pytest.param(replace(TRIAGE, keep_order=True), id="the order of units"),
    ],
)
def test_the_digest_covers_all_of_it(changed: SpotQuestion | TriageQuestion) -> None:
    assert digest(changed) != digest(SPOT if isinstance(changed, SpotQuestion) else TRIAGE)

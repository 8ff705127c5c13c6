"""An observation is read strictly, and its result stands only where the sheet bears it out."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from pillar_drill import course

from journeybook.marking import canonical
from journeybook.marking.attempt import Card
from journeybook.marking.compiled import compile_course
from journeybook.marking.observation import (
    Assessor,
    NotAnObservation,
    Observation,
    SecondObserver,
    StepSeen,
    read,
    to_json,
    write,
)
from journeybook.marking.observed import misfits, watched

COMPILED = compile_course(course())
CONTENT: Any = COMPILED.content
PRACTICAL_ID, PRACTICAL = next(iter(CONTENT["public"]["practicals"].items()))
STEPS = [step["id"] for step in PRACTICAL["steps"]]
CRITICAL = next(step["id"] for step in PRACTICAL["steps"] if step["critical"])
CONDITIONS = len(PRACTICAL["texts"]["en"]["safety"])


def seen(**changes: Any) -> Observation:
    whole = Observation(
        course="pillar-drill",
        version="1.0",
        digest=COMPILED.digest,
        profile="uk",
        language="en",
        practical=PRACTICAL_ID,
        person=Card(id="0417", name="Robin Ashdown", workplace="Quillon Basin Works"),
        unit="drill 2",
        held_on=date(2026, 11, 24),
        location="the shed",
        assessor=Assessor(name="R. Tansley", role="foreman", basis="named by the works manager"),
        second=SecondObserver(name="T. Marrable", role="training lead"),
        safety=(True,) * CONDITIONS,
        steps=tuple(StepSeen(step=step, seen="yes", prompted=False, note="") for step in STEPS),
        stopped=False,
        note="",
        result="competent",
        started="2026-11-24T09:00:00Z",
        ended="2026-11-24T09:20:00Z",
    )
    return replace(whole, **changes)


def with_step(step: str, **changes: Any) -> Observation:
    whole = seen()
    return replace(
        whole, steps=tuple(replace(each, **changes) if each.step == step else each for each in whole.steps)
    )


def codes(observation: Observation) -> list[str]:
    return [problem.code for problem in misfits(observation, CONTENT, COMPILED.digest)]


def test_what_is_written_is_read_again() -> None:
    assert read(write(seen())) == seen()
    assert read(write(seen(second=None))) == seen(second=None)


def test_bytes_that_are_not_canonical_are_refused() -> None:
    with pytest.raises(canonical.NotCanonical):
        read(json.dumps(to_json(seen()), indent=1).encode())


def test_another_format_is_named_as_such() -> None:
    with pytest.raises(NotAnObservation, match="journeybook observation 1") as refused:
        read(b'{"format":"journeybook attempt 1"}')
    assert refused.value.code == "O001"


@pytest.mark.parametrize("member", sorted(set(to_json(seen())) - {"format"}))
def test_a_missing_member_is_named(member: str) -> None:
    record = to_json(seen())
    del record[member]
    with pytest.raises(NotAnObservation, match=member):
        read(canonical.write(record))


@pytest.mark.parametrize(
    ("member", "value"),
    [
        ("digest", "0" * 63),
        ("held-on", "2026-02-30"),
        ("started", "2026-11-24 09:00"),
        ("result", "passed"),
        ("stopped", 0),
        ("safety", [1]),
        ("assessor", {"name": "R. Tansley"}),
        ("second", "T. Marrable"),
        ("person", {"id": "1", "name": 2, "workplace": ""}),
        ("steps", [{"id": "a", "seen": "perhaps", "prompted": False, "note": ""}]),
        ("steps", [{"id": "a", "seen": "yes", "prompted": False, "note": ""}] * 2),
        ("note", "x" * 1001),
        ("course", ""),
    ],
)
def test_a_member_of_the_wrong_shape_is_named(member: str, value: Any) -> None:
    with pytest.raises(NotAnObservation, match=member) as refused:
        read(canonical.write(to_json(seen()) | {member: value}))
    assert refused.value.code == "O002"


def test_a_whole_sheet_bears_out_competent() -> None:
    assert codes(seen()) == []
    found = watched(seen(), CONTENT)
    assert (found.competent, found.shown, found.missed) == (True, len(STEPS), ())


@pytest.mark.parametrize("changes", [{"seen": "no"}, {"seen": "not-seen"}, {"prompted": True}])
def test_a_critical_step_that_was_not_shown_without_help_takes_competent_away(
    changes: dict[str, Any],
) -> None:
    observation = with_step(CRITICAL, **changes)
    assert codes(observation) == ["O005"]
    assert watched(observation, CONTENT).missed == (CRITICAL,)


def test_an_unconfirmed_condition_or_an_early_end_takes_competent_away() -> None:
    assert codes(seen(safety=(False,) * CONDITIONS)) == ["O005"]
    assert codes(seen(stopped=True)) == ["O005"]


def test_not_yet_competent_always_stands() -> None:
    assert codes(replace(with_step(CRITICAL, seen="no"), result="not-yet-competent", stopped=True)) == []


def test_a_record_of_other_contents_is_not_judged() -> None:
    assert codes(seen(digest="0" * 64)) == ["O003"]


def test_missing_or_exchanged_steps_are_noticed() -> None:
    assert codes(seen(steps=())) == ["O004"]
    assert codes(seen(steps=(replace(seen().steps[0], step="another"),))) == ["O004"]
    assert codes(seen(safety=())) == ["O004"]
    assert codes(seen(practical="another")) == ["O004"]


def test_both_people_have_names() -> None:
    nobody = Card(id="", name=" ", workplace="")
    assert codes(seen(person=nobody)) == ["O006"]
    assert codes(seen(assessor=Assessor(name="", role="", basis=""))) == ["O006"]


def test_a_clock_that_was_set_back_is_only_said() -> None:
    assert codes(seen(ended="2026-11-24T08:00:00Z")) == ["O007"]

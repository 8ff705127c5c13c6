"""What a place has earned, and each reason why it has not."""

from __future__ import annotations

import copy
from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from class_of_three import CONTENT, COURSE, DATA, KAY, ROBIN, attempt, attempt_of, sitting
from class_of_three import observation as observation_of_kay

from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.observation import Assessor as Observer
from journeybook.marking.observation import StepSeen
from journeybook.marking.remark import Marker, Remarked
from journeybook.sittings.earned import Earned, earned, told_apart
from journeybook.sittings.inbox import Course
from journeybook.sittings.months import months_later
from journeybook.sittings.sitting import Countersigned, ObservationHeld, Place, Received, Vouched

TODAY = date(2026, 12, 3)
DAY = timedelta(days=1)
RIGHT: dict[str, Any] = {
    "isolate-1": "a",
    "isolate-2": "a",
    "set-order": ["isolate", "loosen", "slide", "tighten", "start"],
    "guard-several": ["crack", "screw", "bent"],
    "parts-match": {"collar": "holds", "sleeve": "covers"},
    "height-number": {"value": "0.6", "unit": "cm"},
}
SPEEDS = ("796,2", "1327")


def answers(ticket: str, **wrong: Any) -> dict[str, Any]:
    given: dict[str, Any] = {}
    for asked in attempt_of(ticket).form:
        given[asked.question] = (
            {"value": SPEEDS[asked.variant], "unit": "rpm"}
            if asked.question == "speed-number"
            else RIGHT[asked.question]
        )
    return {**given, **{id_: answer for id_, answer in wrong.items() if id_ in given}}


def received(data: bytes) -> Received:
    return Received(
        text=data.decode(),
        fingerprint=fingerprint(data),
        received="2026-12-02T10:00:00Z",
        by_way_of="file",
        source="",
    )


VOUCHED = Vouched(by="T. Marrable", on=date(2026, 12, 2), identity="Works pass")


def seated(ticket: str = KAY, **changes: Any) -> Place:
    place = sitting().place(ticket)
    assert place is not None
    whole = replace(
        place,
        attempt=received(attempt(ticket, answers=answers(ticket))),
        vouched=VOUCHED,
        observations=(held(observation()),),
    )
    return replace(whole, **changes)


def observation(**changes: Any) -> bytes:
    """Seen before the check, so that the day of the one is never taken for that of the other."""
    earlier: dict[str, Any] = {
        "held_on": date(2026, 11, 20),
        "started": "2026-11-20T11:00:00Z",
        "ended": "2026-11-20T11:10:00Z",
    }
    return observation_of_kay(**{**earlier, **changes})


def held(data: bytes, *, signed: bool = True) -> ObservationHeld:
    return ObservationHeld(
        text=data.decode(),
        fingerprint=fingerprint(data),
        received="2026-12-02T12:00:00Z",
        countersigned=Countersigned(by="T. Marrable", on=date(2026, 12, 2)) if signed else None,
    )


def course(change: Callable[[Any], None] | None = None) -> Course:
    """The course; ``change`` changes what is read of it, not what it is marked by."""
    content = copy.deepcopy(CONTENT)
    if change is not None:
        change(content)
    return Course(data=DATA, content=content, marker=Marker(DATA))


def of(place: Place, *, here: Course | None = None, today: date = TODAY, **more: Any) -> Earned:
    changes = {name: more.pop(name) for name in list(more) if name != "self_recorded"}
    one = replace(sitting(), **{"people": (place,), **changes})
    assert COURSE is not None
    return earned(one, place, here or COURSE, today=today, latest=today, **more)


def why(result: Earned) -> list[str]:
    assert result.claim is None
    return [reason.why for reason in result.reasons]


def test_who_passed_under_eyes_and_showed_it_has_earned_everything() -> None:
    claim = of(seated()).claim
    assert claim is not None
    assert (claim.check, claim.identity, claim.assessor) == ("supervised", "Works pass", "T. Marrable")
    assert (claim.practical, claim.observed) == ("observed", date(2026, 11, 20))
    assert claim.observations == (fingerprint(observation()),)
    assert (claim.marks, claim.of, claim.cut, claim.must_pass) == (claim.of, 5000, 80, (1, 1))
    assert claim.checked == date(2026, 12, 2)
    assert claim.fingerprint == fingerprint(attempt(KAY, answers=answers(KAY)))


def test_training_is_due_again_counted_from_the_older_proof() -> None:
    claim = of(seated()).claim
    assert claim is not None
    assert claim.retrain_by == date(2027, 11, 20)
    later = of(seated(observations=(held(observation(held_on=date(2026, 12, 2))),))).claim
    assert later is not None
    assert later.retrain_by == date(2027, 12, 2)


def test_training_that_is_older_than_its_check_is_due_a_year_after_the_training() -> None:
    claim = of(seated(), trained=date(2026, 9, 30)).claim
    assert claim is not None
    assert claim.retrain_by == date(2027, 9, 30)
    long_ago = of(seated(), trained=date(2025, 9, 30))
    assert why(long_ago) == ["Training has been due again since 2026-09-30."]


def test_an_observation_that_does_not_count_leaves_the_day_of_the_check() -> None:
    claim = of(seated(observations=(held(observation(), signed=False),))).claim
    assert claim is not None
    assert (claim.practical, claim.observed, claim.observations) == ("not observed", None, ())
    assert claim.retrain_by == date(2027, 12, 2)


def test_nothing_back_is_no_certificate() -> None:
    result = of(seated(attempt=None, vouched=None))
    assert (result.passed, why(result)) == (None, ["Nothing has come back."])


def test_below_the_cut_is_not_yet_passed() -> None:
    data = attempt(
        KAY, answers={id_: right for id_, right in answers(KAY).items() if id_.startswith("isolate")}
    )
    result = of(seated(attempt=received(data)))
    assert result.passed is False
    assert why(result) == ["Not yet passed: 1 of 5, and 80 % are needed."]
    assert "journeybook seal --earlier" in result.reasons[0].mend


def test_a_missed_must_pass_is_named_by_its_fact() -> None:
    wrong = attempt(KAY, answers=answers(KAY, **{"isolate-1": "b", "isolate-2": "c"}))
    result = of(seated(attempt=received(wrong)))
    assert result.passed is False
    assert why(result) == ["Not yet passed: not right on what must be right: “Isolate first.”"]


class _Critically(Marker):
    """Marks as ever, and says that a drill ended critically: the small course asks none in its check."""

    def re_mark(self, attempt_bytes: bytes, name: str = "attempt") -> Remarked:
        whole = super().re_mark(attempt_bytes, name)
        assert whole.result is not None
        return replace(whole, result={**whole.result, "passed": False, "critical": ["jammed"]})


def test_a_critical_error_in_a_drill_is_named() -> None:
    here = Course(data=DATA, content=CONTENT, marker=_Critically(DATA))
    assert why(of(seated(), here=here)) == ["Not yet passed: a critical error ended the drill jammed."]


def test_who_was_not_vouched_for_has_passed_and_gets_none() -> None:
    result = of(seated(vouched=None))
    assert (result.passed, why(result)) == (True, ["Nobody has vouched that this person sat the check."])
    assert "--self-recorded" in result.reasons[0].mend


@pytest.mark.parametrize(
    ("day", "stands"),
    [(date(2026, 11, 30), False), (date(2026, 12, 1), True), (TODAY, True), (TODAY + DAY, False)],
)
def test_a_word_is_given_when_there_is_something_to_give_it_for(day: date, stands: bool) -> None:
    found = of(seated(vouched=replace(VOUCHED, on=day)))
    told = [] if found.claim else why(found)
    assert told == ([] if stands else [f"The check of 2026-12-02 is said to have been vouched for on {day}."])


def test_a_paper_is_signed_on_no_day_to_come() -> None:
    seen = replace(held(observation()), countersigned=Countersigned(by="T. Marrable", on=TODAY + DAY))
    found = of(seated(observations=(seen,)))
    assert found.claim is not None
    assert found.claim.practical == "not observed"
    assert f"countersigned on {TODAY + DAY}, which is still to come" in found.notes[0]


@pytest.mark.parametrize("by", ["Kay Ferriby", "kay  ferriby"])
def test_nobody_vouches_for_themselves(by: str) -> None:
    result = of(seated(vouched=replace(VOUCHED, by=by)))
    assert (result.passed, why(result)) == (
        True, ["Kay Ferriby has vouched for Kay Ferriby, and nobody vouches for themselves."],
    )  # fmt: skip


def test_unless_a_self_recorded_one_was_asked_for() -> None:
    claim = of(seated(vouched=None, observations=()), self_recorded=True).claim
    assert claim is not None
    assert (claim.check, claim.identity, claim.assessor) == ("self-recorded", "", "")


def test_whoever_was_vouched_for_stays_supervised_then() -> None:
    claim = of(seated(), self_recorded=True).claim
    assert claim is not None
    assert claim.check == "supervised"


def test_a_self_recorded_check_with_an_observed_practical_names_who_observed() -> None:
    claim = of(seated(vouched=None), self_recorded=True).claim
    assert claim is not None
    assert (claim.check, claim.practical, claim.assessor) == ("self-recorded", "observed", "T. Marrable")


def test_two_people_are_named_with_what_each_confirms() -> None:
    other = held(observation(assessor=Observer(name="A. Fenwright", role="", basis="")))
    claim = of(seated(observations=(other,))).claim
    assert claim is not None
    assert claim.assessor == "T. Marrable (check); A. Fenwright (practical)"
    assert told_apart(claim.assessor) == ("T. Marrable", "A. Fenwright")


@pytest.mark.parametrize("name", ["", "T. Marrable", "A. Fenwright; K. Vane"])
def test_one_name_stands_for_both(name: str) -> None:
    assert told_apart(name) == (name, "")


def test_names_that_do_not_fit_a_certificate_are_a_reason() -> None:
    other = held(observation(assessor=Observer(name="A" * 190, role="", basis="")))
    assert why(of(seated(observations=(other,)))) == [
        "The names of those who supervised and observed have more than 200 characters together."
    ]


@pytest.mark.parametrize(
    ("kept", "told"),
    [
        ((), "No observation has come in."),
        ((held(observation(), signed=False),), "Nobody has confirmed that the paper"),
        (
            (held(observation(result="not-yet-competent")),),
            "Not yet competent on 2026-11-20, says T. Marrable.",
        ),
        ((held(observation(held_on=date(2026, 12, 4))),), "dated 2026-12-04, which is still to come"),
        (
            (held(observation(held_on=date(2026, 12, 3))),),
            "of 2026-12-03 is said to be countersigned on 2026-12-02, before it was made.",
        ),
        (
            (held(observation(assessor=Observer(name="kay  FERRIBY", role="", basis=""))),),
            "is by the very person who was observed.",
        ),
        ((held(observation(safety=(False,))),), "cannot stand: Not every safety condition"),
        ((held(observation(stopped=True)),), "cannot stand: The practical was ended"),
        (
            (held(observation(steps=(StepSeen(step="close-the-gap", seen="yes", prompted=True, note=""),))),),
            "The critical step “close-the-gap” was not shown without help.",
        ),
        ((held(observation(digest="b" * 64)),), "cannot stand: The record is of"),
        ((replace(held(observation()), fingerprint="AAAA-BBBB-CCCC-DDDD"),), "No observation has come in."),
        ((replace(held(observation()), text="{}"),), "No observation has come in."),
        ((held(observation(practical="elsewhere")),), "No observation has come in."),
    ],
)
def test_a_practical_that_does_not_count_leaves_the_knowledge_check_and_is_said(
    kept: tuple[ObservationHeld, ...], told: str
) -> None:
    result = of(seated(observations=kept))
    assert result.claim is not None
    assert (result.claim.practical, result.claim.observations) == ("not observed", ())
    (note,) = result.notes
    assert note.startswith("Practical not observed: “Set the guard”. ")
    assert told in note


NOT_YET = {"result": "not-yet-competent"}


@pytest.mark.parametrize(
    ("first", "second", "practical"),
    [
        ({}, NOT_YET | {"held_on": date(2026, 11, 21)}, "not observed"),
        (NOT_YET, {"held_on": date(2026, 11, 21)}, "observed"),
        ({}, NOT_YET | {"ended": "2026-11-20T15:00:00Z"}, "not observed"),
        (NOT_YET, {"ended": "2026-11-20T15:00:00Z"}, "observed"),
    ],
)
def test_the_last_countersigned_observation_decides_in_whatever_order_they_came(
    first: dict[str, Any], second: dict[str, Any], practical: str
) -> None:
    both = (held(observation(**first)), held(observation(**second)))
    for kept in (both, both[::-1]):
        claim = of(seated(observations=kept)).claim
        assert claim is not None
        assert claim.practical == practical


def test_one_practical_of_two_is_not_the_practical() -> None:
    def two(content: Any) -> None:
        other = copy.deepcopy(content["public"]["practicals"]["guard-watched"])
        other["texts"]["en"]["title"] = "Change the drill"
        content["public"]["practicals"]["change"] = other

    result = of(seated(), here=course(two))
    assert result.claim is not None
    assert (result.claim.practical, result.claim.observations, result.claim.retrain_by) == (
        "not observed", (), date(2027, 12, 2),
    )  # fmt: skip
    assert result.notes == ("Practical not observed: “Change the drill”. No observation has come in.",)


def test_a_course_without_a_practical_has_none_observed() -> None:
    result = of(seated(), here=course(lambda content: content["public"]["practicals"].clear()))
    assert result.claim is not None
    assert result.claim.practical == "not observed"
    assert result.notes == ("The course has no practical, so none was observed.",)


def test_more_practicals_than_a_certificate_names_are_not_observed() -> None:
    kept = []

    def nine(content: Any) -> None:
        one = content["public"]["practicals"]["guard-watched"]
        content["public"]["practicals"] = {f"p{at}": one for at in range(9)}

    kept = [held(observation(practical=f"p{at}")) for at in range(9)]
    result = of(seated(observations=tuple(kept)), here=course(nine))
    assert result.claim is not None
    assert result.claim.practical == "not observed"
    assert "has 9 practicals" in result.notes[0]


def test_what_has_run_out_is_not_issued() -> None:
    last = date(2027, 11, 20)
    assert of(seated(), today=last).claim is not None
    assert why(of(seated(), today=date(2027, 11, 21))) == ["Training has been due again since 2027-11-20."]


def test_a_day_still_to_come_is_not_one_on_which_somebody_was_checked() -> None:
    place = seated(observations=(), vouched=replace(VOUCHED, on=date(2026, 12, 4)))
    assert why(of(place, held_on=date(2026, 12, 4))) == [
        "The check was held on 2026-12-04, which is still to come."
    ]


def test_every_reason_is_told_at_once() -> None:
    data = attempt(KAY, answers={})
    result = of(seated(attempt=received(data), vouched=None), today=date(2029, 1, 1))
    assert len(result.reasons) == 4
    assert result.passed is False


def test_an_attempt_with_another_fingerprint_than_was_held_is_refused() -> None:
    odd = replace(received(attempt(KAY, answers=answers(KAY))), fingerprint="AAAA-BBBB-CCCC-DDDD")
    result = of(seated(attempt=odd))
    assert result.passed is None
    assert why(result)[0].endswith("and AAAA-BBBB-CCCC-DDDD stands beside it.")


def test_an_attempt_of_somebody_else_is_refused() -> None:
    result = of(seated(attempt=received(attempt(ROBIN))))
    assert result.passed is None
    assert "is not that of Kay Ferriby" in why(result)[0]


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (b"{}", "does not say that it is"),
        (b"{ }", "canonical"),
        (attempt(KAY, answers={"elsewhere": "a"}), "which the form does not ask"),
    ],
)
def test_what_cannot_be_marked_earns_nothing(data: bytes, told: str) -> None:
    result = of(seated(attempt=received(data)))
    assert result.passed is None
    assert told in why(result)[0]


def test_a_form_that_the_ticket_does_not_give_is_refused() -> None:
    whole = attempt_of(KAY, answers={})
    data = attempt(KAY, answers={}, form=whole.form[::-1])
    result = of(seated(attempt=received(data)))
    assert "not what the record's seed gives" in why(result)[0]


@pytest.mark.parametrize(("ended", "notes"), [("2026-12-03", 0), ("2026-12-01", 0), ("2026-12-05", 1)])
def test_a_clock_that_is_days_off_is_said_and_decides_nothing(ended: str, notes: int) -> None:
    data = attempt(KAY, answers=answers(KAY), ended=f"{ended}T09:20:00Z")
    result = of(seated(attempt=received(data)))
    assert result.claim is not None
    assert len(result.notes) == notes
    assert result.claim.checked == date(2026, 12, 2)


@pytest.mark.parametrize(
    ("day", "months", "later"),
    [
        (date(2026, 1, 31), 1, date(2026, 2, 28)),
        (date(2028, 1, 31), 1, date(2028, 2, 29)),
        (date(2028, 2, 29), 12, date(2029, 2, 28)),
        (date(2028, 2, 29), 48, date(2032, 2, 29)),
        (date(2026, 8, 31), 1, date(2026, 9, 30)),
        (date(2026, 12, 2), 12, date(2027, 12, 2)),
        (date(2026, 12, 31), 2, date(2027, 2, 28)),
        (date(2026, 11, 30), 1, date(2026, 12, 30)),
        (date(2026, 5, 15), 120, date(2036, 5, 15)),
        (date(2096, 2, 29), 48, date(2100, 2, 28)),
    ],
)
def test_months_later_is_the_same_day_or_the_last_of_a_short_month(
    day: date, months: int, later: date
) -> None:
    assert months_later(day, months) == later

"""A drill that is often gone through rightly by luck is found, with the exact chance."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from journeybook.audit.audit_memo import AuditMemo
from journeybook.audit.guessable_drills import find_guessable_drills
from journeybook.content.loader import load_course
from journeybook.content.model import Course, Deed

BASE = Path(__file__).parents[2] / "faults" / "base"


def course() -> Course:
    found, problems = load_course(BASE, "pillar-drill", profile="uk")
    assert found is not None, problems
    return found


def with_deeds(of: Course, moment: str, *more: Deed) -> Course:
    """The course whose drill has more deeds at a moment."""
    drill = of.drills["drill-jams"]
    moments = tuple(
        replace(one, deeds=(*one.deeds, *more)) if one.id == moment else one for one in drill.moments
    )
    return replace(of, drills={drill.id: replace(drill, moments=moments)})


def right(name: str, to: str) -> Deed:
    return Deed(id=name, text=name, leads_to=to, place=course().drills["drill-jams"].place)


def test_a_drill_that_guessing_seldom_gets_right_is_fine() -> None:
    assert list(find_guessable_drills(course())) == []


def test_a_drill_that_guessing_often_gets_right_is_named_with_its_chance() -> None:
    # Right are then 3 of 5 deeds, 2 of 3 and 2 of 3.
    easy = with_deeds(course(), "jam", right("stop-two", "stopped"), right("stop-three", "stopped"))
    easy = with_deeds(easy, "stopped", right("isolate-two", "free"))
    easy = with_deeds(easy, "free", right("clamp-two", "good"))
    (problem,) = find_guessable_drills(easy)
    assert problem.code == "A010"
    assert problem.place == easy.drills["drill-jams"].place
    assert "with full marks 4/15 of the time" in problem.message


def test_a_quarter_is_still_fine() -> None:
    # Right are 2 of 4 deeds, 2 of 2 after the other is led to the same moment, and 1 of 2.
    quarter = with_deeds(course(), "jam", right("stop-two", "stopped"))
    drill = quarter.drills["drill-jams"]
    moments = tuple(
        replace(one, deeds=(one.deeds[0], right("same", "free"))) if one.id == "stopped" else one
        for one in drill.moments
    )
    quarter = replace(quarter, drills={drill.id: replace(drill, moments=moments)})
    assert list(find_guessable_drills(quarter)) == []


def test_a_drill_that_was_edited_is_looked_at_again() -> None:
    memo = AuditMemo()
    with memo.one_round():
        assert list(find_guessable_drills(course(), memo)) == []
    easy = with_deeds(
        course(), "jam", right("a-1", "stopped"), right("a-2", "stopped"), right("a-3", "stopped")
    )
    easy = with_deeds(easy, "stopped", right("b-1", "free"), right("b-2", "free"))
    easy = with_deeds(easy, "free", right("c-1", "good"), right("c-2", "good"))
    with memo.one_round():
        assert [problem.code for problem in find_guessable_drills(easy, memo)] == ["A010"]

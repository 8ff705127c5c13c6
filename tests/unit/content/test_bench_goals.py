"""Which places of a bench meet what is asked: judged on the very integers that are shown."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from journeybook.content.bench_goals import accepted_places
from journeybook.content.bench_of import fan_of
from journeybook.content.loader import load_course
from journeybook.content.model import Goal, SettingQuestion, Stand, Trial

BASE = Path(__file__).parents[2] / "faults" / "base"
COURSE, _ = load_course(BASE, "pillar-drill", profile="uk")
assert COURSE is not None
WORKED = fan_of(COURSE, "extraction")
QUESTION = COURSE.questions["guard-bag"]
assert isinstance(QUESTION, SettingQuestion)
PLACE = QUESTION.place
SHEETS = {"kit": COURSE.kit.values, "profile": COURSE.profile.values}


def accepted(
    moves: tuple[str, ...], *goals: dict[str, str], start: Stand | None = None, **more: Any
) -> list[Any]:
    assert isinstance(QUESTION, SettingQuestion)
    trial = Trial(bench="extraction", start=start or Stand(), moves=moves, place=PLACE)
    asked = tuple(Goal(place=PLACE, **goal) for goal in goals)
    return accepted_places(
        WORKED, replace(QUESTION, trial=trial, goals=asked, **{"first": "", **more}), SHEETS
    )


# With the gate open and at the quay the table says 709, 649, 598, 553, 514 and 479 m3/h from an empty to a full bag.
@pytest.mark.parametrize(
    ("goal", "places"),
    [
        ({"at_least": "598"}, [0, 1, 2]),
        ({"above": "598"}, [0, 1]),
        ({"at_most": "598"}, [2, 3, 4, 5]),
        ({"below": "598"}, [3, 4, 5]),
        ({"at_least": "500", "at_most": "600"}, [2, 3, 4]),
        ({"above": "598.5"}, [0, 1]),
    ],
)
def test_a_number_is_compared_as_it_is_shown(goal: dict[str, str], places: list[int]) -> None:
    assert accepted(("load",), {"of": "flow", **goal}) == [(place,) for place in places]


def test_an_alarm_sounds_or_is_silent() -> None:
    assert accepted(("load",), {"of": "low-flow", "state": "sounding"}) == [(4,), (5,)]
    assert accepted(("load",), {"of": "low-flow", "state": "silent"}) == [(0,), (1,), (2,), (3,)]


def test_the_first_and_the_last_place_that_meet_the_goal() -> None:
    goal = {"of": "low-flow", "state": "sounding"}
    assert accepted(("load",), goal, first="load") == [(4,)]
    assert accepted(("load",), goal, last="load") == [(5,)]


def test_near_places_count_on_both_sides_and_never_beyond_the_ends() -> None:
    goal = {"of": "low-flow", "state": "sounding"}
    assert accepted(("load",), goal, first="load", near=1) == [(3,), (4,), (5,)]
    assert accepted(("load",), goal, last="load", near=1) == [(4,), (5,)]


def test_what_does_not_move_stands_where_the_trial_begins() -> None:
    goal = {"of": "low-flow", "state": "silent"}
    assert accepted(("load",), goal, start=Stand(opening="half")) == []
    assert accepted(("load",), goal, start=Stand(height="hill")) == [(0,), (1,), (2,)]


def test_several_controls_are_right_together() -> None:
    found = accepted(("load", "opening"), {"of": "low-flow", "state": "silent"})
    assert found == [(0, 2), (1, 2), (2, 2), (3, 2)]
    assert accepted(("opening", "load"), {"of": "low-flow", "state": "silent"}, last="load") == [(2, 3)]


def test_every_goal_has_to_hold() -> None:
    both = ({"of": "low-flow", "state": "silent"}, {"of": "flow", "below": "600"})
    assert accepted(("load",), *both) == [(2,), (3,)]

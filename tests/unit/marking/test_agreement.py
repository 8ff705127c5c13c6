"""Two observers of one practical are compared step by step, and only where they can be."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest
from test_observation import CRITICAL, STEPS, seen, with_step

from journeybook.marking.agreement import of_observations
from journeybook.marking.attempt import Card
from journeybook.marking.observation import Assessor, Observation

OTHER = Assessor(name="T. Marrable", role="training lead", basis="trained as an assessor")


def by_another(observation: Observation) -> Observation:
    return replace(observation, assessor=OTHER)


def test_two_like_sheets_agree_in_everything() -> None:
    found = of_observations(seen(), by_another(seen()))
    assert (found.steps, found.agreed, found.apart) == (len(STEPS), 1, ())


def test_where_they_differ_the_step_is_named_with_both_words() -> None:
    found = of_observations(seen(), by_another(with_step(CRITICAL, seen="not-seen", prompted=True)))
    assert found.apart == ((CRITICAL, "yes", "not seen, prompted"),)
    assert found.agreed == Fraction(len(STEPS) - 1, len(STEPS))


@pytest.mark.parametrize(
    ("other", "what"),
    [
        (seen(), "same assessor"),
        (by_another(seen(practical="another")), "practical"),
        (by_another(seen(digest="0" * 64)), "course"),
        (by_another(seen(person=Card(id="", name="Somebody Else", workplace=""))), "person"),
        (by_another(seen(held_on=date(2026, 11, 25))), "day"),
        (by_another(seen(steps=())), "steps"),
    ],
)
def test_what_cannot_be_compared_is_refused_with_a_sentence(other: Observation, what: str) -> None:
    with pytest.raises(ValueError, match=what):
        of_observations(seen(), other)

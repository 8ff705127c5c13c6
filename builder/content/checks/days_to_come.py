"""Days on which somebody approved, confirmed or retired something: they have been, or it did not happen yet.

A warning and no fault, because the clock of a shop's computer may be the one that is wrong; no release comes of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from journeybook.content.gathered import Gathered
from journeybook.content.model import Approval, Confirmation, Question
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Place, Problem

DAY_TO_COME = "C038"
"""The only code that goes away by waiting."""


def check_days_to_come(got: Gathered) -> Iterator[Problem]:
    """No day is later than today, where today is known."""
    if got.today is None:
        return
    for approval in got.every(Approval):
        if approval.on > got.today:
            yield _to_come(
                approval.on, got.place(approval, "on"), "and nobody can have approved the course then"
            )
    for confirmation in got.every(Confirmation):
        if confirmation.on > got.today:
            yield _to_come(confirmation.on, got.place(confirmation, "on"), "and nobody can have looked then")
    for profile in got.unused_profiles:
        for value in profile.file.values:
            if value.confirmed is not None and value.confirmed.on > got.today:
                place = profile.origins[id(value.confirmed)].place("on")
                yield _to_come(value.confirmed.on, place, "and nobody can have looked then")
    for question in got.every(Question):
        if question.retired is not None and question.retired > got.today:
            place = got.place(question, "retired")
            yield _to_come(question.retired, place, "but from now on the question is not asked")


def _to_come(day: date, place: Place, so: str) -> Problem:
    return warning(
        DAY_TO_COME,
        place,
        f"The day {day.isoformat()} is still to come, {so}.",
        "Correct the date, or leave the key out until it is true; if it is right, set this computer's clock.",
    )

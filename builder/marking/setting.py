"""Controls of a bench set as asked: all or nothing, on the places of its grid, never on values between them."""

from __future__ import annotations

from journeybook.content.bench_goals import accepted_places
from journeybook.content.bench_of import fan_of
from journeybook.content.model import Course, SettingQuestion
from journeybook.marking.kind import WEIGHT, Json, Key, Kind, Marked, malformed, unanswered


def lower(question: SettingQuestion, course: Course) -> dict[str, Json]:
    """Return ``{"kind", "controls", "counts", "accepted": [[place of each control]]}``, controls as ``moves`` has them.

    Raises ``ValueError`` for a question that the cross-checks would have refused.
    """
    trial = question.trial
    if trial is None:
        raise ValueError(f"{question.id}: no trial")
    worked = fan_of(course, trial.bench)
    counts = {axis.id: len(axis.values) for axis in worked.table.axes}
    sheets = {"kit": course.kit.values, "profile": course.profile.values}
    return {
        "kind": "setting",
        "controls": list(trial.moves),
        "counts": [counts[control] for control in trial.moves],
        "accepted": [list(places) for places in accepted_places(worked, question, sheets)],
    }


def mark(key: Key, variant: int, answer: object) -> Marked:  # noqa: ARG001 - Kind.mark
    """Mark a mapping of every moved control to its place, counted from 0."""
    if answer is None:
        return unanswered("setting")
    if not isinstance(answer, dict) or set(answer) != set(key["controls"]):
        return malformed("setting")
    places = [answer[control] for control in key["controls"]]
    for place, count in zip(places, key["counts"], strict=True):
        if type(place) is not int or not 0 <= place < count:
            return malformed("setting")
    return Marked(WEIGHT if places in key["accepted"] else 0, {"kind": "setting"})


KIND = Kind(name="setting", lower=lower, mark=mark)

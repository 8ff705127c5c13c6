"""Units sorted into places that stand from the mildest to the strictest.

A unit put into a milder place than its own was *missed*, into a stricter one condemned *needlessly*. Missing costs as
much as a right one earns, condemning half of it, so that neither guessing nor one place for everything pays: with three
places and as many units for each, everything in the strictest place earns nothing, and a guesser's mean is below that.
With only two places condemning costs as much as missing, or the strict one for everything would earn a quarter. A
dangerous unit that was missed leaves nothing. The rule is ours; ``tests/published/test_triage_scoring.py`` counts out
what it does.
"""

from __future__ import annotations

from journeybook.content.model import Course
from journeybook.content.model.hands_on import TriageQuestion
from journeybook.marking.kind import (
    Json,
    Key,
    Kind,
    Marked,
    is_must_pass,
    malformed,
    thousandths,
    unanswered,
)


def lower(question: TriageQuestion, course: Course) -> dict[str, Json]:  # noqa: ARG001 - Kind.lower
    """Return ``{"kind", "places", "units", "right": {unit: place}, "dangerous": [units], "whole"}``."""
    return {
        "kind": "triage",
        "places": [place.id for place in question.places],
        "units": [unit.id for unit in question.units],
        "right": {unit.id: unit.belongs for unit in question.units},
        "dangerous": [unit.id for unit in question.units if unit.dangerous],
        "whole": is_must_pass(question),
    }


def mark(key: Key, variant: int, answer: object) -> Marked:  # noqa: ARG001 - Kind.mark
    """Mark a mapping of unit ids to place ids; units may be left out."""
    if answer is None:
        return unanswered("triage")
    units: list[str] = key["units"]
    right: dict[str, str] = key["right"]
    strictness = {place: index for index, place in enumerate(key["places"])}
    if not isinstance(answer, dict) or not answer.keys() <= right.keys():
        return malformed("triage")
    if not all(isinstance(place, str) and place in strictness for place in answer.values()):
        return malformed("triage")
    given = {unit: strictness[answer[unit]] - strictness[right[unit]] for unit in units if unit in answer}
    missed: list[Json] = [unit for unit in units if given.get(unit, 0) < 0]
    needless: list[Json] = [unit for unit in units if given.get(unit, 0) > 0]
    left: list[Json] = [unit for unit in units if unit not in given]
    dangerous: list[Json] = [unit for unit in key["dangerous"] if unit in missed]
    good = len(units) - len(missed) - len(needless) - len(left)
    costs = 2 * len(missed) + len(needless) * (2 if len(strictness) == 2 else 1)
    share = thousandths(max(0, 2 * good - costs), 2 * len(units))
    if dangerous or (key["whole"] and good < len(units)):
        share = 0
    return Marked(
        share,
        {"kind": "triage", "missed": missed, "needless": needless, "left": left, "dangerous": dangerous},
    )


KIND = Kind(name="triage", lower=lower, mark=mark, arranged="units")

"""Which words of a question are shown before the answer, and which only afterwards.

What is asked and the options are public. Reasons and explanations give the answer away and belong to the
private part of the compiled course, with the keys.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Protocol

from journeybook.content.model import (
    MatchItem,
    NumberQuestion,
    Option,
    OrderQuestion,
    Question,
    SpotQuestion,
    TriageQuestion,
)
from journeybook.marking.kind import Json


class Say(Protocol):
    """Gives a text as written with its references replaced: ``Wording.source``."""

    def __call__(self, text: str, given: Mapping[str, str] | None = None) -> str:
        """``given`` holds the names of a variant."""


def public_texts(question: Question, say: Say) -> dict[str, Json]:
    """Return ``{"ask": [per variant], "options": {id: text}, "items": {id: text}, "places": {id: text}}``.

    None is empty.
    """
    places = question.places if isinstance(question, TriageQuestion) else ()
    return _filled(
        {
            "ask": [say(question.ask, names) for names in question.rows],
            "options": {option.id: say(option.text) for option in question.offered},
            "items": {item.id: say(item.text) for item in question.partnered},
            "places": {place.id: say(place.text) for place in places},
        }
    )


def private_texts(question: Question, say: Say) -> dict[str, Json]:
    """Return the reasons, each where there is one.

    ``{"why": [per variant], "options": {id: reason}, "items": {id: reason}, "rules": [{"first", "then",
    "reason"}], "slips": [[reason per slip] per variant]}``; empty members are left out.
    """
    rules = question.rules if isinstance(question, OrderQuestion) else ()
    slips = question.slips if isinstance(question, NumberQuestion) else ()
    return _filled(
        {
            "why": [say(question.why, names) for names in question.rows] if question.why else [],
            "options": _reasons(question.offered, say),
            "items": _reasons(question.partnered, say),
            "rules": [
                {"first": rule.first, "then": list(rule.then), "reason": say(rule.reason)} for rule in rules
            ],
            "slips": [[say(slip.reason, names) for slip in slips] for names in question.rows]
            if slips
            else [],
        }
    )


def pointed_at(question: Question) -> dict[str, Json]:
    """Return ``{"parts": {spot: part}}`` or ``{"figures": {unit: figure}}``, where answers have to do with drawings."""
    match question:
        case SpotQuestion():
            return {"parts": {spot.id: spot.part for spot in question.spots}}
        case TriageQuestion():
            return {"figures": {unit.id: unit.figure for unit in question.units if unit.figure}}
        case _:
            return {}


def _reasons(parts: Iterable[Option | MatchItem], say: Say) -> dict[str, Json]:
    return {part.id: say(part.reason) for part in parts if part.reason}


def _filled(members: dict[str, Json]) -> dict[str, Json]:
    return {name: value for name, value in members.items() if value}

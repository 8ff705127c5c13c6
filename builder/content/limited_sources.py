"""The sources of one profile: those limited to others are not in its course, and drop out of every list."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any, TypeVar

from journeybook.content.model import (
    Bench,
    Calculator,
    Citation,
    CriticalFact,
    Drill,
    Duties,
    Duty,
    JobCard,
    Lesson,
    Practical,
    PracticalStep,
    Question,
    Validity,
)

Grounded = TypeVar(
    "Grounded",
    Lesson,
    Question,
    Bench,
    Calculator,
    Drill,
    CriticalFact,
    Validity,
    Practical,
    PracticalStep,
    JobCard,
    Duties,
    Duty,
)
_IN_PARTS: dict[type[object], str] = {Practical: "steps", Duties: "duties"}
"""What rests on sources by its parts alone -> the field that holds them."""


class SourcesOfProfile:
    """What a build for one profile keeps; ``checks.limited_sources`` has seen to it that enough is left."""

    def __init__(self, citations: Iterable[Citation], profile: str) -> None:
        self.citations: dict[str, Citation] = {}
        others: set[str] = set()
        for citation in citations:
            if citation.is_for(profile):
                self.citations[citation.id] = citation
            else:
                others.add(citation.id)
        self.others = frozenset(others)
        """Ids of the sources of other profiles."""

    def without_others(self, things: Iterable[Grounded]) -> tuple[Grounded, ...]:
        """The same things without the sources of other profiles; the same object where nothing drops out."""
        if not self.others:
            return tuple(things)
        return tuple([self.without_others_in(thing) for thing in things])

    def without_others_in(self, thing: Grounded) -> Grounded:
        """One thing likewise."""
        if self.others.isdisjoint(thing.sources):
            return thing
        held = _IN_PARTS.get(type(thing))
        left: dict[str, Any] = (
            {"sources": tuple(name for name in thing.sources if name not in self.others)}
            if held is None
            else {held: self.without_others(getattr(thing, held))}
        )
        return replace(thing, **left)

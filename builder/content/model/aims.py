"""What a course is for: outcomes and critical facts."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """What a learner can do after the course."""

    id: str
    text: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class CriticalFact:
    """Something nobody may get wrong; each form asks exactly one question for it, as must-pass."""

    id: str
    text: str
    why: str
    sources: tuple[str, ...]
    place: Place

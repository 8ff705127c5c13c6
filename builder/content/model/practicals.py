"""Practicals: what somebody is watched doing, step by step, by a named assessor."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class PracticalStep:
    """One thing to show, and what the assessor looks for."""

    id: str
    """Unique among the steps of all practicals of the course: duties and records name it."""
    text: str
    """What the assessor reads aloud."""
    look_for: str
    critical: bool = False
    """True where a miss alone means *not yet*."""
    outcome: str
    """Id of the outcome that it shows."""
    sources: tuple[str, ...] = ()
    place: Place


@dataclass(frozen=True, kw_only=True)
class Practical:
    """An observed demonstration: ``practicals/ID.yml``."""

    id: str
    title: str
    intro: str
    minutes: int
    safety: tuple[str, ...]
    """What is confirmed before the first step."""
    steps: tuple[PracticalStep, ...]
    stop: str
    """When the assessor ends it."""
    place: Place

    @property
    def sources(self) -> tuple[str, ...]:
        """What its steps rest on, each source once."""
        return tuple(dict.fromkeys(name for step in self.steps for name in step.sources))

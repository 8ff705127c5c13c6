"""Duties: what a published rule asks of the training, and what in the course covers it."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class Covering:
    """What covers a duty, each by its ids. YAML key ``covered-by``."""

    lessons: tuple[str, ...] = ()
    questions: tuple[str, ...] = ()
    practicals: tuple[str, ...] = ()
    """Ids of steps of practicals."""
    job_cards: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Duty:
    """One requirement."""

    id: str
    text: str
    sources: tuple[str, ...] = ()
    """Ids of citations: the clauses. YAML key ``source``."""
    covered_by: Covering
    place: Place


@dataclass(frozen=True, kw_only=True)
class Duties:
    """The requirements of one profile: ``duties/PROFILE.yml``."""

    id: str
    """Id of the profile."""
    duties: tuple[Duty, ...]
    place: Place

    @property
    def sources(self) -> tuple[str, ...]:
        """Every clause that is named, once."""
        return tuple(dict.fromkeys(name for duty in self.duties for name in duty.sources))

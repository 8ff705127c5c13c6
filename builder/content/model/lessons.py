"""Modules and lessons."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from journeybook.diagnostics.problem import Place


class BlockKind(StrEnum):
    """What a block of a lesson is."""

    TEXT = "text"
    STEPS = "steps"
    WARNING = "warning"
    STOP = "stop"
    """Stop and ask."""
    WHY = "why"
    EXAMPLE = "example"
    MISTAKE = "mistake"
    """A common mistake, and what it leads to."""
    FIGURE = "figure"
    BENCH = "bench"
    """Something to try out on the page."""
    CALCULATOR = "calculator"
    """A sum to work with one's own numbers."""


@dataclass(frozen=True, kw_only=True)
class Block:
    """A block of a lesson."""

    kind: BlockKind
    text: str = ""
    """CommonMark; for ``figure``, ``bench`` and ``calculator`` the id; empty for ``steps``."""
    steps: tuple[str, ...] = ()
    place: Place


@dataclass(frozen=True, kw_only=True)
class Lesson:
    """One sitting's reading, with practice after it."""

    id: str
    title: str
    minutes: int
    outcomes: tuple[str, ...]
    sources: tuple[str, ...]
    body: tuple[Block, ...]
    practice: tuple[str, ...] = ()
    """Ids of ``use: practice`` questions."""
    draft: bool = False
    place: Place


@dataclass(frozen=True, kw_only=True)
class Module:
    """One operation of the route card: a folder ``20-parts`` has operation 20 and id ``parts``."""

    id: str
    operation: int
    title: str
    summary: str
    lessons: tuple[Lesson, ...]
    place: Place

    @property
    def minutes(self) -> int:
        """The lessons' minutes added up."""
        return sum(lesson.minutes for lesson in self.lessons)

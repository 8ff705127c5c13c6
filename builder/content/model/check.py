"""What a check is made of."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.content.model.questions import Outlook
from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class Cell:
    """How many questions of one outcome and level a check draws."""

    outcome: str
    level: Outlook
    draw: int
    place: Place


@dataclass(frozen=True, kw_only=True)
class Blueprint:
    """competence-check.yml: what a check draws and what passes it."""

    title: str
    percent: int
    """The cut, in percent of the marks, 1 to 100."""
    grounds: str
    """Why the cut is where it is."""
    minutes: int
    """About how long it takes; nothing is timed."""
    cells: tuple[Cell, ...]
    sealed: bool = False
    """Its questions stand in no site; it is taken at a sitting, under an assessor."""
    place: Place

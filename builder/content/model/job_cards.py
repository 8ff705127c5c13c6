"""Job cards: one page for the place where the work is done."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from journeybook.diagnostics.problem import Place


class CardBlockKind(StrEnum):
    """What a block of a job card is."""

    TEXT = "text"
    STEPS = "steps"
    WARNING = "warning"
    STOP = "stop"
    FIGURE = "figure"
    TABLE = "table"
    BLANKS = "blanks"
    """Lines to write on, each with its label."""


@dataclass(frozen=True, kw_only=True)
class CardTable:
    """A table to read, or to fill in where its cells are empty."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    """Each has as many cells as there are columns, or none at all where it is empty."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class CardBlock:
    """A block of a job card."""

    kind: CardBlockKind
    text: str = ""
    """CommonMark; for ``figure`` the figure's id."""
    lines: tuple[str, ...] = ()
    """The steps, or the labels of the blanks."""
    table: CardTable | None = None
    place: Place


@dataclass(frozen=True, kw_only=True)
class JobCard:
    """``job-cards/ID.yml``."""

    id: str
    title: str
    when: str
    """When it is used, or where it hangs."""
    body: tuple[CardBlock, ...]
    tag: bool = False
    """True for a tag that is tied on: it prints with a hole and a heavy edge."""
    keep: str = ""
    """How long a filled-in sheet is kept, and where; empty where the card is no record."""
    sources: tuple[str, ...] = ()
    place: Place

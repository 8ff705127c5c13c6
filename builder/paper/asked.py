"""A question as paper asks it: letters for what is chosen, numbers for what gets a letter, and no word of the answer.

Everything here is plain data for ``sheets/question-paper.typ``. No id of an option and nothing of the marking key is
kept: what is not here cannot be printed by mistake.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from journeybook.paper.plain_picture import Picture
from journeybook.paper.rich_text import Block, Run


@dataclass(frozen=True, kw_only=True)
class Marked:
    """Something with the letter or number that stands for it."""

    mark: str
    runs: list[Run]
    picture: Picture | None = None

    def as_data(self) -> dict[str, Any]:
        """What the template reads."""
        return {"mark": self.mark, "runs": self.runs, "picture": _picture(self.picture)}


@dataclass(frozen=True, kw_only=True)
class Deed:
    """Something that can be done in a drill, and on which row it goes on."""

    mark: str
    runs: list[Run]
    row: int

    def as_data(self) -> dict[str, Any]:
        """What the template reads."""
        return {"mark": self.mark, "runs": self.runs, "row": self.row}


@dataclass(frozen=True, kw_only=True)
class DrillRow:
    """A moment of a drill; an end says no more than that it ends there."""

    number: int
    """0 where it begins, which stands with the question."""
    blocks: list[Block]
    deeds: list[Deed]
    """None where it ends, or where another row is read."""
    read_on: int = 0
    """The row to read in its place; 0 where there is none."""

    def as_data(self) -> dict[str, Any]:
        """What the template reads."""
        deeds = [deed.as_data() for deed in self.deeds]
        return {"number": self.number, "blocks": self.blocks, "deeds": deeds, "read-on": self.read_on}


@dataclass(frozen=True, kw_only=True)
class BenchColumn:
    """A column of a bench's table."""

    words: str
    unit: str = ""
    numbers: bool = True
    """Whether numbers stand in it, which are set to the right."""


@dataclass(frozen=True, kw_only=True)
class BenchTable:
    """A bench as a table of everything that can be read off it: one row for each way in which it can be set."""

    title: str
    example: bool
    standing: list[tuple[str, str]]
    """What cannot be moved, and how it stands."""
    controls: list[str]
    """What can be moved: its columns stand first."""
    columns: list[BenchColumn]
    rows: list[list[str]]
    """Cells of the controls, then those of ``columns``."""
    caution: list[Block]

    def as_data(self) -> dict[str, Any]:
        """What the template reads."""
        return {
            "title": self.title,
            "example": self.example,
            "standing": [list(each) for each in self.standing],
            "controls": self.controls,
            "columns": [
                {"words": one.words, "unit": one.unit, "numbers": one.numbers} for one in self.columns
            ],
            "rows": self.rows,
            "caution": self.caution,
        }


@dataclass(frozen=True, kw_only=True)
class PaperQuestion:
    """One question of a form."""

    number: str
    """``q1``, ``q2`` … in the drawn order."""
    kind: str
    todo: str
    """What to do, in the reader's language."""
    ask: list[Block]
    picture: Picture | None = None
    bench: BenchTable | None = None
    lettered: list[Marked]
    """What a letter stands for, in the drawn order: options, steps, named parts, partners, places."""
    numbered: list[Marked]
    """What gets a letter: items of a match, units of a triage."""
    drill: list[DrillRow]
    """Where it begins, then the rows by their number."""
    drill_title: str = ""
    situation: list[Block]
    units: list[str]
    """Of a number: what it may be said in; more than one means that the unit is part of the answer."""
    choose_unit: bool = False
    controls: list[tuple[str, int]]
    """Of a setting: each control, and how many places it has."""
    steps: int = 0
    """Of a drill: the most letters that can be written."""

    def pictures(self) -> dict[str, bytes]:
        """The files of its drawings by name."""
        shown = (self.picture, *(one.picture for one in (*self.lettered, *self.numbered)))
        return {one.name: one.data for one in shown if one is not None}

    def as_data(self) -> dict[str, Any]:
        """What the template reads."""
        return {
            "number": self.number,
            "kind": self.kind,
            "todo": self.todo,
            "ask": self.ask,
            "picture": _picture(self.picture),
            "bench": self.bench.as_data() if self.bench else None,
            "lettered": [one.as_data() for one in self.lettered],
            "numbered": [one.as_data() for one in self.numbered],
            "drill": [row.as_data() for row in self.drill],
            "drill-title": self.drill_title,
            "situation": self.situation,
        }


def _picture(picture: Picture | None) -> dict[str, Any] | None:
    return picture.as_data() if picture else None

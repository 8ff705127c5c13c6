"""What job-cards/ID.yml may hold."""

from __future__ import annotations

from typing import Any

from journeybook.content.formats.parts import ID, LINE, SENTENCES, source_field
from journeybook.content.model.job_cards import CardBlock, CardBlockKind, CardTable, JobCard
from journeybook.diagnostics.problem import Place
from journeybook.source.listing import Listing
from journeybook.source.reading import INVALID, Reading
from journeybook.source.scalars import Flag, Text, Whole
from journeybook.source.shapes import Field, Record
from journeybook.source.unions import OneKeyUnion

_CELLS = Listing(Text(300, blank=True), least=1, most=8, noun="cell")


class _Rows:
    """``rows: N``, so many empty rows, or ``rows: [[…], …]``."""

    _count = Whole(1, 40)
    _listed = Listing(_CELLS, least=1, most=40, noun="row")

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """A tuple of rows, or ``INVALID``. An empty row has no cells yet: how many, the columns say."""
        if isinstance(container[key], list):
            return self._listed.read(reading, container, key, trail)
        count = self._count.read(reading, container, key, trail)
        return INVALID if count is INVALID else ((),) * count

    def schema(self) -> dict[str, Any]:
        """Either of the two."""
        return {"anyOf": [self._count.schema(), self._listed.schema()]}


_TABLE = Record(
    CardTable,
    "table",
    [
        Field(
            "columns",
            Listing(LINE, least=1, most=8, noun="column"),
            "The heads of the columns.",
            ["Date", "Gap (mm)"],
        ),
        Field("rows", _Rows(), "How many empty rows, or the rows with their cells.", 8),
    ],
)


def _block(kind: str, value: Any, place: Place) -> CardBlock:
    match kind:
        case "steps" | "blanks":
            return CardBlock(kind=CardBlockKind(kind), lines=value, place=place)
        case "table":
            return CardBlock(kind=CardBlockKind.TABLE, table=value, place=place)
        case _:
            return CardBlock(kind=CardBlockKind(kind), text=value, place=place)


_BLOCK = OneKeyUnion(
    _block,
    "block",
    [
        Field("text", SENTENCES, "A few sentences.", "Between two lines, the smaller one."),
        Field(
            "steps",
            Listing(SENTENCES, least=1, most=20, noun="step"),
            "What to do, in order.",
            ["**Isolate.**", "**Set** the guard."],
        ),
        Field("warning", SENTENCES, "What can hurt someone.", "The spindle runs on after the stop button."),
        Field("stop", SENTENCES, "When to stop and ask.", "The guard does not reach the work: ask."),
        Field("figure", ID, "The id of a figure.", "guard-parts"),
        Field("table", _TABLE, "A table to read or to fill in.", {"columns": ["Date", "Gap"], "rows": 8}),
        Field(
            "blanks",
            Listing(LINE, least=1, most=20, noun="label"),
            "Lines to write on, each with its label.",
            ["Name", "Date"],
        ),
    ],
)

JOB_CARD = Record(
    JobCard,
    "job card",
    [
        Field("title", LINE, "What the card is called.", "Before you drill"),
        Field("when", SENTENCES, "When it is used.", "Each time the work is changed."),
        source_field(),
        Field(
            "body",
            Listing(_BLOCK, least=1, most=30, noun="block"),
            "The blocks, one after the other; together they fill one page.",
            [{"steps": ["**Isolate.**"]}],
        ),
        Field("tag", Flag(), "true for a tag that is tied on.", True, default=False),
        Field(
            "keep",
            SENTENCES,
            "How long a filled-in sheet is kept, and where: it is a record then.",
            "Two years, in the folder of the drill.",
            default="",
        ),
    ],
)

"""Fields that several kinds of file share."""

from __future__ import annotations

from journeybook.content.model import Confirmation
from journeybook.source.scalars import Day, Id, Text
from journeybook.source.shapes import Field, Listing, Record

LINE = Text(300)
"""A title, a label, a name."""
SENTENCES = Text(4_000)
"""A few sentences of CommonMark."""
PAGE = Text(20_000)
"""A long text of CommonMark."""
ID = Id()
IDS = Listing(ID, least=1, most=50, or_single=True, noun="id")
"""One id, or a list of ids."""

CONFIRMATION = Record(
    Confirmation,
    "confirmation",
    [
        Field("by", LINE, "Who looked at the original.", "T. Marrable"),
        Field("on", Day(), "The day on which they looked.", "2026-11-20"),
        Field("edition", LINE, "Which edition they looked at.", "2", default=""),
    ],
    placed=False,
)


def source_field(
    *,
    describe: str = "Where it is known from: one id of sources.yml, or a list; `kit` is the kit sheet.",
    example: str | list[str] = "kit",
) -> Field:
    """The key ``source`` of everything that rests on sources."""
    return Field("source", IDS, describe, example, default=(), name="sources")

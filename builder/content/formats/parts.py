"""Fields that several kinds of file share."""

from __future__ import annotations

from journeybook.content.model import Confirmation
from journeybook.source.listing import Listing
from journeybook.source.scalars import Day, Id, Text
from journeybook.source.shapes import Field, Record

LINE = Text(300)
"""A title, a label, a name."""


def as_written(most: int) -> Text:
    """A text that is printed as it stands, on certificates and in lists: no reference in it would be replaced."""
    return Text(
        most,
        pattern=r"\s*[^\s{}][^{}]*",
        rule=(
            "no reference is replaced here, so the braces would be printed",
            "Write the words themselves, without braces.",
        ),
        code="W007",
    )


NAME = as_written(300)
"""A title, a name or a number that is printed as it stands."""
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
        Field("by", NAME, "Who looked at the original.", "T. Marrable"),
        Field("on", Day(), "The day on which they looked.", "2026-11-20"),
        Field("edition", NAME, "Which edition they looked at.", "2", default=""),
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

"""What kit.yml, profiles/ID.yml, sources.yml and words.yml may hold."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.content.formats.parts import (
    CONFIRMATION,
    ID,
    IDS,
    LINE,
    NAME,
    SENTENCES,
    as_written,
    source_field,
)
from journeybook.content.model import Citation, Standing, Term, Value
from journeybook.diagnostics.problem import Place
from journeybook.source.listing import Listing
from journeybook.source.scalars import Flag, OneOf
from journeybook.source.shapes import Field, Record


@dataclass(frozen=True, kw_only=True)
class SheetFile:
    """kit.yml or a profile as read."""

    title: str
    values: tuple[Value, ...]
    place: Place


@dataclass(frozen=True, kw_only=True)
class SourcesFile:
    """sources.yml as read."""

    sources: tuple[Citation, ...]
    place: Place


@dataclass(frozen=True, kw_only=True)
class WordsFile:
    """words.yml as read."""

    words: tuple[Term, ...]
    place: Place


_CONFIRMED = Field(
    "confirmed",
    CONFIRMATION,
    "Who looked at the original, and when.",
    {"by": "T. Marrable", "on": "2026-11-20"},
    default=None,
)

VALUE = Record(
    Value,
    "value",
    [
        Field("id", ID, "The name that texts use: `{kit.ID}`.", "guard-gap"),
        Field("label", LINE, "What it is, in words.", "Largest gap under the guard"),
        Field("value", as_written(2_000), "The value, in quotes, exactly as it should be shown.", "6"),
        Field("unit", as_written(30), "Its unit.", "mm", default=""),
        Field(
            "note", SENTENCES, "Anything to know about it.", "Measured with the drill at rest.", default=""
        ),
        source_field(
            describe="An id of sources.yml, or a list of them, where it is not the sheet itself.",
            example="drill-manual",
        ),
        Field("page", NAME, "Where in the source, in quotes.", "12", default=""),
        _CONFIRMED,
        Field("example", Flag(), "true where the value is invented.", True, default=False),
    ],
    id_key="id",
)


def _sheet(noun: str) -> Record:
    return Record(
        SheetFile,
        noun,
        [
            Field("title", NAME, "What the sheet is called.", "Kit sheet: pillar drill, example"),
            Field(
                "values",
                Listing(VALUE, most=500, noun="value"),
                "The values, each with an id.",
                [{"id": "guard-gap", "label": "Largest gap under the guard", "value": "6", "unit": "mm"}],
            ),
        ],
    )


KIT = _sheet("kit sheet")
PROFILE = _sheet("profile")

SOURCES = Record(
    SourcesFile,
    "list of sources",
    [
        Field(
            "sources",
            Listing(
                Record(
                    Citation,
                    "source",
                    [
                        Field("id", ID, "The id that `source` names elsewhere.", "puwer-11"),
                        Field("title", NAME, "What it is called.", "PUWER 1998"),
                        Field("clause", NAME, "The clause or paragraph.", "reg 11", default=""),
                        Field("year", as_written(30), "The year, in quotes.", "1998", default=""),
                        Field(
                            "status",
                            OneOf({one.value: one for one in Standing}),
                            "How well it is known: read, reported, from memory, or common practice.",
                            "read",
                            name="standing",
                        ),
                        _CONFIRMED,
                        Field(
                            "only",
                            IDS,
                            "The profiles in whose sites it exists; without it, all.",
                            ["uk"],
                            default=(),
                        ),
                    ],
                    id_key="id",
                ),
                most=1_000,
                noun="source",
            ),
            "Every citation once.",
            [{"id": "puwer-11", "title": "PUWER 1998", "clause": "reg 11", "status": "read"}],
        ),
    ],
)

WORDS = Record(
    WordsFile,
    "glossary",
    [
        Field(
            "words",
            Listing(
                Record(
                    Term,
                    "word",
                    [
                        Field("id", ID, "The id that texts use: `{word.ID}`.", "chuck-key"),
                        Field("word", NAME, "The word as it is said here.", "chuck key"),
                        Field("meaning", SENTENCES, "What it means.", "The key that opens the chuck."),
                        Field("figure", ID, "A figure that shows it.", "guard-parts", default=""),
                        Field(
                            "part", ID, "The id of the piece of that drawing to show.", "sleeve", default=""
                        ),
                    ],
                    id_key="id",
                ),
                most=2_000,
                noun="word",
            ),
            "The words of the trade that the course uses.",
            [{"id": "chuck-key", "word": "chuck key", "meaning": "The key that opens the chuck."}],
        ),
    ],
)

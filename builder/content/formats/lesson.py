"""What module.yml and a lesson file may hold."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from journeybook.content.formats.parts import ID, IDS, LINE, PAGE, SENTENCES, source_field
from journeybook.content.model import Block, BlockKind, Lesson
from journeybook.diagnostics.problem import Place
from journeybook.source.listing import Listing
from journeybook.source.scalars import Flag, Whole
from journeybook.source.shapes import Field, Record
from journeybook.source.unions import OneKeyUnion


@dataclass(frozen=True, kw_only=True)
class ModuleFile:
    """module.yml as read."""

    title: str
    summary: str
    place: Place


def _block(kind: str, value: Any, place: Place) -> Block:
    if kind == "steps":
        return Block(kind=BlockKind.STEPS, steps=value, place=place)
    return Block(kind=BlockKind(kind), text=value, place=place)


BLOCK = OneKeyUnion(
    _block,
    "block",
    [
        Field(
            "text", PAGE, "CommonMark; headings start at level 2 (`##`).", "## The guard\n\nIt telescopes."
        ),
        Field("figure", ID, "The id of a figure.", "guard-parts"),
        Field("bench", ID, "The id of a bench to try out.", "extractor"),
        Field("calculator", ID, "The id of a calculator.", "spindle-speed"),
        Field(
            "steps",
            Listing(SENTENCES, least=1, most=40, noun="step"),
            "What to do, in order.",
            ["Isolate.", "Set the stop."],
        ),
        Field("warning", SENTENCES, "What can hurt someone.", "The chuck turns on after the stop button."),
        Field("stop", SENTENCES, "When to stop and ask.", "Stop and ask: the guard does not reach the work."),
        Field(
            "why",
            SENTENCES,
            "The reason behind a rule.",
            "Swarf winds round a glove faster than a hand opens.",
        ),
        Field("example", SENTENCES, "A worked example.", "A 60 mm drill in a 20 mm plate …"),
        Field("mistake", SENTENCES, "A common mistake, and what it leads to.", "Tying the guard up."),
    ],
)

LESSON = Record(
    Lesson,
    "lesson",
    [
        Field("id", ID, "The id that texts use: `{lesson.ID}`.", "parts-of-the-guard"),
        Field("title", LINE, "What the lesson is called.", "Parts of the guard"),
        Field("minutes", Whole(1, 120), "About how long it takes to read.", 6),
        Field("outcomes", IDS, "The outcomes it teaches.", ["guard-set"]),
        source_field(),
        Field(
            "body",
            Listing(BLOCK, most=200, noun="block"),
            "The blocks, one after the other.",
            [{"text": "It telescopes."}],
        ),
        Field(
            "practice",
            Listing(ID, most=100, or_single=True, noun="question id"),
            "Ids of `use: practice` questions asked after it.",
            ["guard-01"],
            default=(),
        ),
        Field("draft", Flag(), "While true, a missing source is a warning.", True, default=False),
    ],
    id_key="id",
)

MODULE = Record(
    ModuleFile,
    "module",
    [
        Field("title", LINE, "What the module is called.", "Know the guard"),
        Field("summary", SENTENCES, "What is in it.", "Its parts, and what each is for."),
    ],
)

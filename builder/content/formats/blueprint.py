"""What competence-check.yml may hold."""

from __future__ import annotations

from journeybook.content.formats.parts import ID, LINE, SENTENCES
from journeybook.content.model import Blueprint, Cell, Outlook
from journeybook.source.listing import Listing
from journeybook.source.scalars import Flag, OneOf, Whole
from journeybook.source.shapes import Field, Record

BLUEPRINT = Record(
    Blueprint,
    "blueprint",
    [
        Field("title", LINE, "What the check is called.", "Knowledge check"),
        Field("percent", Whole(1, 100), "The pass mark in percent, without a sign.", 80),
        Field(
            "grounds",
            SENTENCES,
            "Why the pass mark is where it is.",
            "Agreed by the trainers on 20 November 2026.",
        ),
        Field("minutes", Whole(1, 480), "About how long it takes; nothing is timed.", 30),
        Field(
            "cells",
            Listing(
                Record(
                    Cell,
                    "cell",
                    [
                        Field("outcome", ID, "The outcome to ask about.", "guard-set"),
                        Field(
                            "level",
                            OneOf({one.value: one for one in Outlook}),
                            "recall, apply or decide.",
                            "apply",
                        ),
                        Field("draw", Whole(1, 200), "How many questions are drawn.", 2),
                    ],
                ),
                least=1,
                most=200,
                noun="cell",
            ),
            "How many questions of which outcome and level are drawn.",
            [{"outcome": "guard-set", "level": "apply", "draw": 2}],
        ),
        Field(
            "sealed",
            Flag(),
            "true keeps the questions of the check out of the site: it is taken at a sitting, under an assessor.",
            True,
            default=False,
        ),
    ],
)

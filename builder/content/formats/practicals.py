"""What practicals/ID.yml may hold."""

from __future__ import annotations

from journeybook.content.formats.parts import ID, LINE, SENTENCES, source_field
from journeybook.content.model.practicals import Practical, PracticalStep
from journeybook.source.listing import Listing
from journeybook.source.scalars import Flag, Whole
from journeybook.source.shapes import Field, Record

_STEP = Record(
    PracticalStep,
    "step",
    [
        Field("id", ID, "An id that no other step of any practical has.", "isolate"),
        Field("text", SENTENCES, "What the assessor reads aloud.", "Make the drill safe to touch."),
        Field(
            "look-for",
            SENTENCES,
            "What the assessor looks for.",
            "Isolates, tries the start button, keeps the key.",
        ),
        Field("critical", Flag(), "true where a miss alone means not yet.", True, default=False),
        Field("outcome", ID, "The outcome that it shows.", "guard-set"),
        source_field(),
    ],
    id_key="id",
)

PRACTICAL = Record(
    Practical,
    "practical",
    [
        Field("title", LINE, "What the practical is called.", "Set the guard"),
        Field("intro", SENTENCES, "How it goes.", "The assessor reads each step aloud and watches."),
        Field("minutes", Whole(1, 480), "About how long it takes.", 15),
        Field(
            "safety",
            Listing(SENTENCES, least=1, most=30, noun="condition"),
            "What is confirmed before the first step.",
            ["The drill is isolated and locked."],
        ),
        Field(
            "steps",
            Listing(_STEP, least=1, most=60, noun="step"),
            "The steps, in their order.",
            [
                {
                    "id": "isolate",
                    "text": "Make the drill safe.",
                    "look-for": "Isolates.",
                    "outcome": "guard-set",
                }
            ],
        ),
        Field("stop", SENTENCES, "When the assessor ends it.", "At once if the spindle turns."),
    ],
)

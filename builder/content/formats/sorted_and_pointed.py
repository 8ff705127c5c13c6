"""What spot and triage questions hold beside what every question has."""

from __future__ import annotations

from journeybook.content.formats.parts import ID
from journeybook.content.model.hands_on import Spot, TriageUnit
from journeybook.content.model.questions import Option
from journeybook.source.listing import Listing
from journeybook.source.scalars import Flag, Text
from journeybook.source.shapes import Field, Record

_SHORT = Text(2_000)
_PART = Text(
    120,
    pattern=r"[A-Za-z_][A-Za-z0-9_.-]*",
    rule=("it cannot be an id in a drawing", "Write the `id` of an element of the drawing."),
)

SPOTS = Field(
    "spots",
    Listing(
        Record(
            Spot,
            "spot",
            [
                Field("id", ID, "An id within the question.", "sleeve"),
                Field("text", _SHORT, "What it is called in the list.", "The sleeve"),
                Field("part", _PART, "The `id` of an element in the drawing.", "sleeve"),
                Field("reason", _SHORT, "Why it is wrong, or why it is right.", "It slides.", default=""),
            ],
            id_key="id",
        ),
        least=2,
        most=20,
        noun="spot",
    ),
    "The parts of the drawing that can be chosen.",
    [
        {"id": "sleeve", "text": "The sleeve", "part": "sleeve"},
        {"id": "collar", "text": "The collar", "part": "collar", "reason": "It is clamped."},
    ],
)

PLACES = Field(
    "places",
    Listing(
        Record(
            Option,
            "place",
            [
                Field("id", ID, "An id within the question.", "use"),
                Field("text", _SHORT, "What is done with a unit that belongs there.", "Use it"),
            ],
            id_key="id",
        ),
        least=2,
        most=6,
        noun="place",
    ),
    "Where the units go, from the mildest place to the strictest.",
    [{"id": "use", "text": "Use it"}, {"id": "tag-out", "text": "Tag it out"}],
)

UNITS = Field(
    "units",
    Listing(
        Record(
            TriageUnit,
            "unit",
            [
                Field("id", ID, "An id within the question.", "u1"),
                Field("text", _SHORT, "The condition in which it lies there.", "Drill 1. Sleeve cracked."),
                Field("belongs", ID, "The id of its place.", "tag-out"),
                Field(
                    "dangerous",
                    Flag(),
                    "true where a milder place could hurt somebody; missing such a unit leaves no marks.",
                    True,
                    default=False,
                ),
                Field("figure", ID, "A figure that shows it.", "cracked-sleeve", default=""),
                Field("reason", _SHORT, "Why it belongs there.", "It would let a cuff in.", default=""),
            ],
            id_key="id",
        ),
        least=2,
        most=20,
        noun="unit",
    ),
    "What is to be sorted.",
    [
        {"id": "u1", "text": "Drill 1. Sleeve whole.", "belongs": "use", "reason": "Nothing is wrong."},
        {
            "id": "u2",
            "text": "Drill 2. Sleeve cracked.",
            "belongs": "tag-out",
            "reason": "It lets a cuff in.",
        },
    ],
)

"""What benches/ID.yml may hold: one record a kind of bench."""

from __future__ import annotations

from journeybook.benches.fan_unit import CONTROLS, READINGS
from journeybook.content.formats.assembly_bench import ASSEMBLY
from journeybook.content.formats.fan_bench import FAN, NUMBER, stand
from journeybook.content.formats.parts import ID
from journeybook.content.model.benches import BenchReading, Stand, Trial
from journeybook.content.model.hands_on import Goal
from journeybook.source.listing import Listing
from journeybook.source.scalars import NamedTexts, OneOf
from journeybook.source.shapes import Field, Record
from journeybook.source.unions import KindUnion

BENCH = KindUnion(
    "kind",
    "bench",
    {
        "fan": FAN,
        "assembly": ASSEMBLY,
    },
)

CONTROL_WORD = OneOf({one: one for one in CONTROLS})
"""The name of a control."""

TRIAL = Record(
    Trial,
    "trial",
    [
        Field("bench", ID, "The bench that stands above the question.", "extractor"),
        Field(
            "start",
            stand("start", "The id or value of the place it stands at."),
            "Where its controls stand at first.",
            {"load": "80"},
            default=Stand(),
        ),
        Field(
            "moves",
            Listing(CONTROL_WORD, most=6, noun="control"),
            "The controls that the learner can change.",
            ["load"],
            default=(),
        ),
        Field(
            "hides",
            Listing(CONTROL_WORD, most=6, noun="control"),
            "Controls whose place is not shown.",
            ["opening"],
            default=(),
        ),
    ],
)
"""What the key ``trial`` of a question may hold."""

READS = NamedTexts(
    Record(
        BenchReading,
        "reading",
        [
            Field("bench", ID, "The bench on which it stands.", "extractor"),
            Field("of", OneOf({one: one for one in READINGS}), "Which of its readings.", "flow"),
            Field(
                "at",
                stand("at", "The id or value of the place it stands at."),
                "Where its controls stand; the others where the bench begins.",
                {"load": "40"},
                default=Stand(),
            ),
        ],
    ),
    most=8,
    noun="named readings",
    mend="Write a name and what is read: `{minutes: {bench: ID, of: minutes}}`.",
)
"""What the key ``reads`` of a number question may hold."""

_GOAL = Record(
    Goal,
    "goal",
    [
        Field("of", OneOf({one: one for one in READINGS}), f"What is judged: {', '.join(READINGS)}.", "flow"),
        *(
            Field(key, NUMBER, f"It has to be {words} this, in the reading's unit.", "170", default="")
            for key, words in (
                ("at-least", "at least"),
                ("at-most", "at most"),
                ("above", "more than"),
                ("below", "less than"),
            )
        ),
        Field(
            "is",
            OneOf({one: one for one in ("sounding", "silent")}),
            "What the alarm does.",
            "sounding",
            default="",
            name="state",
        ),
    ],
)

GOALS = Listing(_GOAL, least=1, most=6, noun="goal")
"""What the key ``goal`` of a setting question may hold."""

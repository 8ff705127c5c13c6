"""What benches/ID.yml of ``kind: assembly`` may hold."""

from __future__ import annotations

from journeybook.content.formats.fan_bench import COMMON
from journeybook.content.formats.parts import ID, SENTENCES, as_written
from journeybook.content.model.assembly_bench import DEED, AssemblyBench, BenchPart, PartSize
from journeybook.content.model.questions import Rule
from journeybook.drawing.exploded.parts import LOOKS, SHAPES, SIDES
from journeybook.source.listing import Listing
from journeybook.source.scalars import Flag, OneOf, Whole
from journeybook.source.shapes import Field, Record

_LENGTH = Whole(2, 400)

_SIZE = Record(
    PartSize,
    "size",
    [
        Field("wide", _LENGTH, "How wide it is drawn, in units of your own.", 60),
        Field("high", _LENGTH, "How high it is drawn.", 40),
        Field("deep", _LENGTH, "From front to back; for boxes and plates.", 30, default=0),
    ],
)

_PART = Record(
    BenchPart,
    "part",
    [
        Field("id", ID, "An id within the bench.", "sleeve"),
        Field(
            "name", as_written(60), "What it is called in the drawing; for a deed, what is done.", "Sleeve"
        ),
        Field(
            "step",
            as_written(80),
            "What is done with it, where the name does not say so.",
            "Push the sleeve in",
            default="",
        ),
        Field(
            "shape",
            OneOf({one: one for one in (*SHAPES, DEED)}),
            f"How it looks: {', '.join(SHAPES)}; `{DEED}` is a step without a part.",
            "tube",
        ),
        Field(
            "look",
            OneOf({one: one for one in LOOKS}),
            f"What it is made of: {', '.join(LOOKS)}.",
            "mesh",
            default="plain",
        ),
        Field("size", _SIZE, "How large it is drawn.", {"wide": 52, "high": 90}, default=None),
        Field(
            "joins",
            ID,
            "The part that it goes on; none for the one that stands there from the beginning.",
            "collar",
            default="",
        ),
        Field(
            "side",
            OneOf({one: one for one in SIDES}),
            f"On which side of it: {', '.join(SIDES)}.",
            "below",
            default="above",
        ),
        Field(
            "shift", Whole(-400, 400), "How far from the middle of that side: right, or down.", 10, default=0
        ),
        Field("into", Whole(0, 400), "How far it goes in.", 8, default=0),
    ],
    id_key="id",
)

ASSEMBLY = Record(
    AssemblyBench,
    "bench",
    [
        *COMMON,
        Field(
            "parts",
            Listing(_PART, least=3, most=60, noun="part"),
            "What there is to put together, and what is done besides.",
            [
                {"id": "collar", "name": "Collar", "shape": "ring", "size": {"wide": 60, "high": 20}},
                {
                    "id": "sleeve",
                    "name": "Sleeve",
                    "shape": "tube",
                    "size": {"wide": 50, "high": 90},
                    "joins": "collar",
                    "side": "below",
                },
                {"id": "gap", "name": "Measure the gap", "shape": "deed"},
            ],
        ),
        Field(
            "rules",
            Listing(
                Record(
                    Rule,
                    "rule",
                    [
                        Field("first", ID, "The step that comes before.", "sleeve"),
                        Field(
                            "then",
                            Listing(ID, least=1, most=30, or_single=True, noun="step id"),
                            "The steps that come after it.",
                            ["gap"],
                        ),
                        Field(
                            "critical",
                            Flag(),
                            "true where breaking it can hurt somebody.",
                            True,
                            default=False,
                        ),
                        Field(
                            "reason",
                            SENTENCES,
                            "What would happen otherwise.",
                            "There is nothing to measure.",
                            default="",
                        ),
                    ],
                ),
                most=100,
                noun="rule",
            ),
            "Which step comes before which.",
            [{"first": "sleeve", "then": ["gap"], "reason": "There is nothing to measure."}],
        ),
    ],
    fixed={"kind": "assembly"},
    title="assembly bench",
)

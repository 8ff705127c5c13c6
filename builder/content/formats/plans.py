"""What ``draw`` of figures/ID.yml may hold: six kinds of drawings that are made from data."""

from __future__ import annotations

from typing import Any

from journeybook.content.formats.benches import CONTROL_WORD
from journeybook.content.formats.fan_bench import stand
from journeybook.content.formats.parts import ID
from journeybook.content.formats.plan_files import (
    AnswersFile,
    AskFile,
    AtFile,
    BenchLineFile,
    ChartFile,
    DecisionFile,
    DoFile,
    GaugeFile,
    LayerFile,
    LineFile,
    PathFile,
    RangeFile,
    ScaleFile,
    StackFile,
    StopFile,
    TimelineFile,
)
from journeybook.content.model import Stand
from journeybook.drawing.plans.stack import LOOKS
from journeybook.source.listing import Listing
from journeybook.source.scalars import ID_PATTERN, Flag, OneOf, Text
from journeybook.source.shapes import Field, Record
from journeybook.source.unions import KeyUnion, KindUnion

WORDS = Text(200)
"""Words on a drawing: not CommonMark, for nothing in a drawing is slanted or linked."""
NAME = Text(40)
"""Words that stand on one line, so that they fit on a phone."""
NUMBER = Text(
    100,
    pattern=rf"\s*(?:-?[0-9]{{1,12}}(?:\.[0-9]{{1,12}})?|-?\{{(?:kit|profile)\.{ID_PATTERN}(?:\.number)?\}})\s*",
    rule=(
        "that is not a number",
        'Write a number alone, such as "3.5", or a value such as "{kit.NAME.number}".',
    ),
    code="F020",
)


def _words(key: str, describe: str, example: str, **more: Any) -> Field:
    return Field(key, WORDS, describe, example, **more)


_FROM = Field("from", NUMBER, "Where it begins, in quotes.", "0", name="low")
_TO = Field("to", NUMBER, "Where it ends, in quotes.", "3000", name="high")
_UNIT = Field("unit", Text(12), "The unit of its numbers.", "rpm", default="")


def _ats(key: str, noun: str, most: int, describe: str, example: dict[str, str]) -> Field:
    record = Record(
        AtFile,
        noun,
        [
            Field("at", NUMBER, "Where it stands, in quotes.", "2500"),
            Field("name", NAME, "What it is called, in a few words.", "most for this drill"),
        ],
    )
    return Field(key, Listing(record, most=most, noun=noun), describe, [example], default=())


_STACK = Record(
    StackFile,
    "drawing",
    [
        _words("medium", "What passes the layers.", "swarf", default=""),
        Field(
            "layers",
            Listing(
                Record(
                    LayerFile,
                    "layer",
                    [
                        _words("name", "What the layer is called.", "Sleeve"),
                        _words("note", "A few words about it.", "clear plastic", default=""),
                        Field(
                            "look",
                            OneOf({look: look for look in LOOKS}),
                            "How it is drawn.",
                            "plate",
                            default="plain",
                        ),
                        Field("thin", Flag(), "true for a thin layer.", True, default=False),
                    ],
                ),
                least=2,
                most=12,
                noun="layer",
            ),
            "The layers, the one that is met first at the top.",
            [{"name": "Sleeve", "note": "clear plastic", "look": "plate", "thin": True}, {"name": "Collar"}],
        ),
    ],
    fixed={"kind": "stack"},
    title="stack",
)

_PATH = Record(
    PathFile,
    "drawing",
    [
        _words("medium", "What passes, or what the stations have in common.", "work", default=""),
        Field(
            "stops",
            Listing(
                Record(
                    StopFile,
                    "stop",
                    [
                        _words("name", "What it is called.", "Isolate"),
                        _words("note", "A few words about it.", "lock on, key in the pocket", default=""),
                    ],
                ),
                least=2,
                most=12,
                noun="stop",
            ),
            "The stations in their order.",
            [{"name": "Isolate", "note": "lock on"}, {"name": "Set the guard"}],
        ),
    ],
    fixed={"kind": "path"},
    title="path",
)

_GAUGE = Record(
    GaugeFile,
    "drawing",
    [
        Field("label", NAME, "What is measured.", "Speed"),
        _UNIT,
        _FROM,
        _TO,
        _ats("marks", "mark", 8, "What matters on the scale.", {"at": "2500", "name": "most"}),
        _ats("pointers", "pointer", 8, "What was read.", {"at": "1000", "name": "set"}),
        Field(
            "good",
            Record(RangeFile, "range", [_FROM, _TO]),
            "The range that is accepted.",
            {"from": "500", "to": "2500"},
            default=None,
        ),
    ],
    fixed={"kind": "gauge"},
    title="gauge",
)

_TIMELINE = Record(
    TimelineFile,
    "drawing",
    [
        Field("label", NAME, "What the time is.", "Hours of the day"),
        _UNIT,
        _FROM,
        _TO,
        _ats("events", "event", 16, "What happens in it.", {"at": "1000", "name": "check"}),
        Field(
            "spans",
            Listing(
                Record(RangeFile, "span", [_FROM, _TO, _words("name", "What lasts so long.", "first batch")]),
                most=16,
                noun="span",
            ),
            "What lasts in it.",
            [{"from": "0", "to": "1000", "name": "first batch"}],
            default=(),
        ),
    ],
    fixed={"kind": "timeline"},
    title="timeline",
)

_POINT = KeyUnion(
    "point",
    {
        "ask": Record(
            AskFile,
            "point",
            [
                Field("id", ID, "A name within the figure.", "clear"),
                _words("ask", "A question with the answers yes and no.", "Is the table clear?"),
                Field(
                    "if-yes", ID, "The id of the point where yes leads.", "drill", name="yes", mistaken="yes"
                ),
                Field("if-no", ID, "The id of the point where no leads.", "sweep", name="no", mistaken="no"),
            ],
            id_key="id",
        ),
        "do": Record(
            DoFile,
            "point",
            [
                Field("id", ID, "A name within the figure.", "sweep"),
                _words("do", "What to do; here the way ends.", "Sweep it first"),
                Field("stop", Flag(), "true where the work must not go on.", True, default=False),
            ],
            id_key="id",
        ),
    },
)

_DECISION = Record(
    DecisionFile,
    "drawing",
    [
        Field("start", ID, "The id of the first question.", "clear"),
        Field(
            "points",
            Listing(_POINT, least=3, most=24, noun="point"),
            "Questions, and what they lead to.",
            [
                {"id": "clear", "ask": "Is the table clear?", "if-yes": "drill", "if-no": "sweep"},
                {"id": "drill", "do": "Drill"},
                {"id": "sweep", "do": "Sweep it first", "stop": True},
            ],
        ),
        Field(
            "words",
            Record(
                AnswersFile,
                "answers",
                [
                    _words("if-yes", "The word for yes.", "ja", name="yes", mistaken="yes"),
                    _words("if-no", "The word for no.", "nein", name="no", mistaken="no"),
                ],
                title="set of answers",
            ),
            "The words on the arrows, where they are not yes and no.",
            {"if-yes": "ja", "if-no": "nein"},
            default=None,
        ),
    ],
    fixed={"kind": "decision"},
    title="decision",
)

_SCALE = Record(
    ScaleFile,
    "scale",
    [
        _words("label", "What it shows.", "Drill"),
        _UNIT,
        _FROM,
        _TO,
        Field("step", NUMBER, "From one mark to the next; left out, it is chosen.", "5", default=""),
    ],
)
_LINE_NAME = _words("name", "What the line stands for.", "mild steel", default="")
_EXAMPLE_SCALE = {"label": "Drill", "unit": "mm", "from": "0", "to": "20", "step": "5"}

_LINE = KeyUnion(
    "line",
    {
        "points": Record(
            LineFile,
            "line",
            [
                _LINE_NAME,
                Field(
                    "points",
                    Listing(
                        Listing(NUMBER, least=2, most=2, noun="number"),
                        least=2,
                        most=60,
                        noun="point",
                    ),
                    "Points from left to right, each the number at the foot and the one at the side.",
                    [["5", "1500"], ["20", "400"]],
                ),
            ],
        ),
        "bench": Record(
            BenchLineFile,
            "line",
            [
                _LINE_NAME,
                Field("bench", ID, "The bench from which the line is taken.", "extractor"),
                Field("of", ID, "A reading of the bench: how high the line stands.", "flow"),
                Field("along", CONTROL_WORD, "The control whose places are the points of the line.", "load"),
                Field(
                    "at",
                    stand("place", "The id or value of the place it stands at."),
                    "Where its other controls stand; the rest as the bench says.",
                    {"opening": "50"},
                    default=Stand(),
                ),
                Field("divide", NUMBER, "By how much the reading is divided.", "60", default=""),
            ],
        ),
    },
)

_CHART = Record(
    ChartFile,
    "drawing",
    [
        Field("across", _SCALE, "The scale at the foot.", _EXAMPLE_SCALE),
        Field("up", _SCALE, "The scale at the side.", _EXAMPLE_SCALE),
        Field(
            "lines",
            Listing(
                _LINE,
                least=1,
                most=3,
                noun="line",
            ),
            "The lines.",
            [{"name": "mild steel", "points": [["5", "1500"], ["20", "400"]]}],
        ),
        _ats("levels", "level", 3, "Heights that matter.", {"at": "1200", "name": "most"}),
    ],
    fixed={"kind": "chart"},
    title="chart",
)

PLAN = KindUnion(
    "kind",
    "drawing",
    {
        "stack": _STACK,
        "path": _PATH,
        "gauge": _GAUGE,
        "timeline": _TIMELINE,
        "decision": _DECISION,
        "chart": _CHART,
    },
)

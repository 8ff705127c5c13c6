"""What a bank of questions may hold: one record a kind of question."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.content.formats.benches import CONTROL_WORD, GOALS, READS, TRIAL
from journeybook.content.formats.parts import ID, LINE, SENTENCES, source_field
from journeybook.content.formats.sorted_and_pointed import PLACES, SPOTS, UNITS
from journeybook.content.formats.unit_text import UnitText
from journeybook.content.model import (
    ChoiceQuestion,
    ChoicesQuestion,
    DrillQuestion,
    MatchItem,
    MatchQuestion,
    NumberQuestion,
    Option,
    OrderQuestion,
    Outlook,
    Question,
    Rule,
    SettingQuestion,
    Slip,
    SpotQuestion,
    TriageQuestion,
    Use,
)
from journeybook.diagnostics.problem import Place
from journeybook.source.listing import Listing
from journeybook.source.scalars import Day, Flag, Id, NamedTexts, OneOf, Text, Whole
from journeybook.source.shapes import Field, Record
from journeybook.source.unions import KindUnion


@dataclass(frozen=True, kw_only=True, eq=False)
class BankFile:
    """A bank as read; the same only as itself, because comparing a thousand questions takes time."""

    title: str
    questions: tuple[Question, ...]
    place: Place


EXPRESSION = Text(400)
_SHORT = Text(2_000)

_COMMON = [
    Field("id", ID, "An id that no other question of the course has, and that stays for ever.", "guard-03"),
    Field("use", OneOf({one.value: one for one in Use}), "Where it is asked: practice or check.", "practice"),
    Field("outcome", ID, "The outcome it asks about.", "guard-set"),
    Field(
        "level",
        OneOf({one.value: one for one in Outlook}),
        "What it asks for: recall, apply or decide.",
        "apply",
    ),
    source_field(),
    Field(
        "critical",
        Id(instead="Write the id of one of the `critical-facts` of course.yml."),
        "The critical fact it asks; must-pass in a check.",
        "isolate-first",
        default="",
    ),
    Field("figure", ID, "A figure shown with it.", "guard-parts", default=""),
    Field(
        "trial",
        TRIAL,
        "A bench above it, set up for it.",
        {"bench": "extractor", "moves": ["load"]},
        default=None,
    ),
    Field("ask", SENTENCES, "The question itself.", "What comes first?"),
    Field(
        "why",
        SENTENCES,
        "Why the right answer is right; said afterwards.",
        "Because the spindle can start.",
        default="",
    ),
    Field("draft", Flag(), "While true, missing reasons and sources are warnings.", True, default=False),
    Field(
        "retired",
        Day(),
        "From when it is no longer asked; it is kept, never deleted.",
        "2026-11-20",
        default=None,
    ),
]


def _option(noun: str) -> Record:
    return Record(
        Option,
        noun,
        [
            Field("id", ID, "An id within the question.", "a"),
            Field("text", _SHORT, "What it says.", "Isolate the drill."),
            Field(
                "reason", _SHORT, "Why it is wrong, or why it is right.", "The guard comes after.", default=""
            ),
        ],
        id_key="id",
    )


_OPTIONS = Field(
    "options",
    Listing(_option("option"), least=2, most=20, noun="option"),
    "What there is to choose from.",
    [{"id": "a", "text": "Isolate."}, {"id": "b", "text": "Start.", "reason": "Not yet."}],
)
_KEEP_ORDER = Field("keep-order", Flag(), "true where options are never shuffled.", True, default=False)
_FIRST_THEN = Listing(ID, least=1, most=30, or_single=True, noun="step id")

QUESTION = KindUnion(
    "kind",
    "question",
    {
        "choice": Record(
            ChoiceQuestion,
            "question",
            [*_COMMON, _OPTIONS, Field("right", ID, "The id of the right option.", "a"), _KEEP_ORDER],
            id_key="id",
            fixed={"kind": "choice"},
            title="choice question",
        ),
        "choices": Record(
            ChoicesQuestion,
            "question",
            [
                *_COMMON,
                _OPTIONS,
                Field(
                    "right",
                    Listing(ID, least=1, most=20, noun="option id"),
                    "The ids of the right options.",
                    ["a", "c"],
                ),
                _KEEP_ORDER,
            ],
            id_key="id",
            fixed={"kind": "choices"},
            title="choices question",
        ),
        "order": Record(
            OrderQuestion,
            "question",
            [
                *_COMMON,
                Field(
                    "steps",
                    Listing(_option("step"), least=2, most=20, noun="step"),
                    "The steps to put in order.",
                    [{"id": "isolate", "text": "Isolate."}, {"id": "set", "text": "Set the guard."}],
                ),
                Field(
                    "rules",
                    Listing(
                        Record(
                            Rule,
                            "rule",
                            [
                                Field("first", ID, "The step that comes before.", "isolate"),
                                Field("then", _FIRST_THEN, "The steps that come after it.", ["set"]),
                                Field(
                                    "critical",
                                    Flag(),
                                    "true where breaking it scores nothing.",
                                    True,
                                    default=False,
                                ),
                                Field(
                                    "reason",
                                    _SHORT,
                                    "What would happen otherwise.",
                                    "It could start.",
                                    default="",
                                ),
                            ],
                        ),
                        most=100,
                        noun="rule",
                    ),
                    "Which step comes before which.",
                    [{"first": "isolate", "then": ["set"], "reason": "It could start."}],
                ),
            ],
            id_key="id",
            fixed={"kind": "order"},
            title="order question",
        ),
        "match": Record(
            MatchQuestion,
            "question",
            [
                *_COMMON,
                Field(
                    "items",
                    Listing(
                        Record(
                            MatchItem,
                            "item",
                            [
                                Field("id", ID, "An id within the question.", "i1"),
                                Field("text", _SHORT, "What it says.", "Collar"),
                                Field("goes-with", ID, "The id of its answer.", "a1"),
                                Field(
                                    "reason",
                                    _SHORT,
                                    "Why they belong together.",
                                    "It holds the sleeve.",
                                    default="",
                                ),
                            ],
                            id_key="id",
                        ),
                        least=2,
                        most=20,
                        noun="item",
                    ),
                    "What is to be matched.",
                    [
                        {"id": "i1", "text": "Collar", "goes-with": "a1"},
                        {"id": "i2", "text": "Sleeve", "goes-with": "a2"},
                    ],
                ),
                Field(
                    "answers",
                    Listing(_option("answer"), least=2, most=30, noun="answer"),
                    "What they are matched with; more answers than items is welcome.",
                    [{"id": "a1", "text": "Holds"}, {"id": "a2", "text": "Slides"}],
                ),
            ],
            id_key="id",
            fixed={"kind": "match"},
            title="match question",
        ),
        "number": Record(
            NumberQuestion,
            "question",
            [
                *_COMMON,
                Field(
                    "right", EXPRESSION, "The right number, or how to work it out from `given`.", "gap * 2"
                ),
                Field(
                    "tolerance",
                    Text(40),
                    "How far off still counts: a number, or a percentage.",
                    "3 %",
                    default="0",
                ),
                Field("unit", UnitText(), "The unit of the right number.", "mm", default=""),
                Field(
                    "units",
                    Listing(UnitText(), most=20, noun="unit"),
                    "Other units that are accepted.",
                    ["cm"],
                    default=(),
                ),
                Field(
                    "unit-needed",
                    Flag(),
                    "true where giving the unit is part of the skill.",
                    True,
                    default=False,
                ),
                Field(
                    "given",
                    Listing(NamedTexts(EXPRESSION), least=1, most=60, noun="row"),
                    "Named numbers, one row a variant.",
                    [{"gap": "6"}, {"gap": "8"}],
                    default=(),
                ),
                Field(
                    "reads",
                    READS,
                    "Named numbers that stand on a bench, for `right`.",
                    {"flow": {"bench": "extractor", "of": "flow", "at": {"load": "40"}}},
                    default={},
                ),
                Field(
                    "slips",
                    Listing(
                        Record(
                            Slip,
                            "slip",
                            [
                                Field(
                                    "value", EXPRESSION, "The wrong number, or how one gets it.", "gap / 2"
                                ),
                                Field("reason", _SHORT, "What went wrong.", "That is half.", default=""),
                            ],
                        ),
                        most=20,
                        noun="slip",
                    ),
                    "Wrong numbers with a known cause.",
                    [{"value": "gap / 2", "reason": "That is half."}],
                    default=(),
                ),
            ],
            id_key="id",
            fixed={"kind": "number"},
            title="number question",
        ),
        "setting": Record(
            SettingQuestion,
            "question",
            [
                *_COMMON,
                Field(
                    "goal",
                    GOALS,
                    "What must hold of the bench in `trial` when it is set as asked.",
                    [{"of": "flow", "at-least": "170"}],
                    name="goals",
                ),
                Field(
                    "first",
                    CONTROL_WORD,
                    "A control: only the first of its places that meet the goal counts.",
                    "load",
                    default="",
                ),
                Field("last", CONTROL_WORD, "The same with the last.", "load", default=""),
                Field("near", Whole(0, 10), "How many places off still count.", 1, default=0),
            ],
            id_key="id",
            fixed={"kind": "setting"},
            title="setting question",
        ),
        "drill": Record(
            DrillQuestion,
            "question",
            [*_COMMON, Field("drill", ID, "The drill to go through: a name in drills/.", "drill-jams")],
            id_key="id",
            fixed={"kind": "drill"},
            title="drill question",
        ),
        "spot": Record(
            SpotQuestion,
            "question",
            [*_COMMON, SPOTS, Field("right", ID, "The id of the right spot.", "sleeve"), _KEEP_ORDER],
            id_key="id",
            fixed={"kind": "spot"},
            title="spot question",
        ),
        "triage": Record(
            TriageQuestion,
            "question",
            [*_COMMON, PLACES, UNITS, _KEEP_ORDER],
            id_key="id",
            fixed={"kind": "triage"},
            title="triage question",
        ),
    },
)

BANK = Record(
    BankFile,
    "bank",
    [
        Field("title", LINE, "What the bank is about.", "The guard"),
        Field(
            "questions",
            Listing(QUESTION, most=20_000, noun="question"),
            "The questions.",
            [
                {
                    "id": "guard-03",
                    "kind": "choice",
                    "use": "practice",
                    "outcome": "guard-set",
                    "level": "recall",
                    "source": ["kit"],
                    "ask": "What comes first?",
                    "right": "a",
                    "options": [
                        {"id": "a", "text": "Isolate."},
                        {"id": "b", "text": "Start.", "reason": "Not yet."},
                    ],
                }
            ],
        ),
    ],
)

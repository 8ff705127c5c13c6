"""What benches/ID.yml of ``kind: fan`` may hold."""

from __future__ import annotations

from journeybook.benches.fan_unit import CONTROLS, READINGS
from journeybook.content.formats.parts import ID, LINE, SENTENCES, source_field
from journeybook.content.model.benches import Stand
from journeybook.content.model.fan_bench import (
    BatteryOfBench,
    ColdShare,
    ControlPlace,
    ControlRange,
    CurvePoint,
    FanBench,
    FanControl,
    FanParts,
    FanReading,
    FilterOfBench,
)
from journeybook.source.listing import Listing
from journeybook.source.scalars import ID_PATTERN, Flag, OneOf, Text, Whole
from journeybook.source.shapes import Field, Record

NUMBER = Text(
    140,
    pattern=rf"-?\d{{1,9}}(\.\d{{1,9}})?|\{{(kit|profile)\.{ID_PATTERN}(\.number)?\}}",
    rule=(
        "a number belongs here, or the value of a sheet",
        'Write a number alone, in quotes, such as `"0.75"`, or a value such as `"{kit.minimum-flow.number}"`.',
    ),
    code="N001",
)
"""A number as text, or one value of a sheet."""
SHOWN = tuple(reading for reading in READINGS if reading not in ("low-flow", "low-battery"))
"""Readings that are numbers; the two alarms are shown by themselves."""
_WORD = Text(60)
NUMBER_OR_ID = Text(60)
"""A value, or the id of a place."""

COMMON = [
    Field("title", LINE, "What the bench is called.", "The extractor"),
    Field("intro", SENTENCES, "What to try on it.", "Load the filter, and watch the flow.", default=""),
    Field(
        "caution",
        SENTENCES,
        "What it must not be taken for; stands on the bench.",
        "A model with invented values. It is no test of your own machine.",
        default="",
    ),
    source_field(),
    Field("example", Flag(), "true where its values are invented.", True, default=False),
]
"""The keys that every kind of bench has."""


def _numbers(*keys: tuple[str, str, str]) -> list[Field]:
    return [Field(key, NUMBER, describe, example) for key, describe, example in keys]


_POINT = Record(
    CurvePoint,
    "point",
    _numbers(
        ("flow", "A flow.", "200"),
        ("pressure", "The pressure in Pa that the fan makes at it.", "680"),
    ),
)

_FILTER = Record(
    FilterOfBench,
    "filter",
    _numbers(
        ("clean", "What it takes when it is new, in Pa for each unit of flow.", "0.9"),
        ("full", "The same at a load of 100 %.", "3.2"),
    ),
)

_BATTERY = Record(
    BatteryOfBench,
    "battery",
    [
        *_numbers(
            ("energy", "What it holds when new, full and at 20 °C, in Wh.", "37"),
            ("alarm", "The charge in % at which the low-battery alarm sounds.", "5"),
        ),
        Field(
            "cold",
            Listing(
                Record(
                    ColdShare,
                    "share",
                    _numbers(
                        ("at", "A temperature in °C.", "-10"),
                        ("gives", "The share of its energy in % that it gives there.", "75"),
                    ),
                ),
                most=20,
                noun="share",
            ),
            "How much of its energy it gives at which temperature; straight lines between.",
            [{"at": "-10", "gives": "75"}, {"at": "20", "gives": "100"}],
            default=(),
        ),
    ],
)

_RANGE = Record(
    ControlRange,
    "range",
    [
        Field("from", NUMBER, "The first value.", "0", name="least"),
        Field("to", NUMBER, "The last value.", "100", name="most"),
        Field("step", NUMBER, "From one place to the next.", "10"),
    ],
)

_CONTROL = Record(
    FanControl,
    "control",
    [
        Field(
            "of",
            OneOf({one: one for one in CONTROLS}),
            f"What it changes: {', '.join(CONTROLS)}.",
            "load",
        ),
        Field("label", LINE, "What it is called.", "Dust in the filter"),
        Field("unit", _WORD, "Shown after the values of a range.", "%", default=""),
        Field(
            "places",
            Listing(
                Record(
                    ControlPlace,
                    "place",
                    [
                        Field("id", ID, "An id within the control.", "normal"),
                        Field("value", NUMBER, "What it stands for.", "175"),
                        Field("label", LINE, "What it is called.", "Normal"),
                    ],
                    id_key="id",
                ),
                least=2,
                most=40,
                noun="place",
            ),
            "Its places, each with a name; or a `range` instead.",
            [
                {"id": "normal", "value": "175", "label": "Normal"},
                {"id": "high", "value": "205", "label": "High"},
            ],
            default=(),
        ),
        Field(
            "range",
            _RANGE,
            "Evenly spaced places; or `places` instead.",
            {"from": "0", "to": "100", "step": "10"},
            default=None,
        ),
        Field("start", NUMBER_OR_ID, "Where it stands at first: an id, or a value.", "0"),
    ],
    id_key="of",
)

_READING = Record(
    FanReading,
    "reading",
    [
        Field("of", OneOf({one: one for one in SHOWN}), f"What it shows: {', '.join(SHOWN)}.", "flow"),
        Field("label", LINE, "What it is called.", "Flow"),
        Field("unit", _WORD, "In which unit it is shown.", "L/min"),
        Field(
            "places",
            Whole(0, 3),
            "How many decimal places are shown; left out, as many as show two figures of its largest value.",
            0,
            default=None,
        ),
    ],
    id_key="of",
)

_PARTS = Record(
    FanParts,
    "parts",
    [
        Field(key, _WORD, f"What the {key} is called here.", example, default="")
        for key, example in (
            ("inlet", "Grille"),
            ("filter", "Bag filter"),
            ("fan", "Fan"),
            ("duct", "Duct"),
            ("outlet", "Roof"),
        )
    ],
    placed=False,
    title="set of parts",
)


def stand(noun: str, describe: str) -> Record:
    """A value or place for some of the controls."""
    return Record(
        Stand,
        noun,
        [Field(control, NUMBER_OR_ID, describe, "0", default="") for control in CONTROLS],
        placed=False,
        title="set of controls",
    )


FAN = Record(
    FanBench,
    "bench",
    [
        *COMMON,
        Field("flow-unit", _WORD, "The unit of the flows below.", "m3/h", default="L/min"),
        Field(
            "fan",
            Listing(_POINT, least=2, most=20, noun="point"),
            "The fan's curve at full speed, from no flow to no pressure.",
            [{"flow": "0", "pressure": "900"}, {"flow": "340", "pressure": "0"}],
        ),
        Field("filter", _FILTER, "How much the filter resists.", {"clean": "0.9", "full": "3.2"}),
        Field("duct", NUMBER, "What it takes fully open, in Pa for each square of a unit of flow.", "0.0075"),
        Field("efficiency", NUMBER, "Percent of the electrical power that reaches the air.", "36"),
        Field("standby", NUMBER, "What it takes whatever the fan does, in W.", "0.4"),
        Field("churning", NUMBER, "What the fan takes at full speed only to turn, in W.", "1.2", default="0"),
        Field(
            "least-speed",
            NUMBER,
            "Percent of full speed below which the controller does not go.",
            "30",
            default="0",
        ),
        Field(
            "battery",
            _BATTERY,
            "Its battery; left out where there is none.",
            {"energy": "37", "alarm": "5"},
            default=None,
        ),
        Field(
            "alarm-below",
            NUMBER,
            "The flow below which the low-flow alarm sounds; left out where there is none.",
            "{kit.minimum-flow.number}",
            default="",
        ),
        Field("alarm-name", LINE, "What that alarm is called here.", "Lamp: too little is taken", default=""),
        Field("indicator", Flag(), "true where a float shows the flow.", True, default=False),
        Field("parts", _PARTS, "What the parts are called here.", {"duct": "Duct"}, default=FanParts()),
        Field(
            "fixed",
            stand("fixed", "Its value where it is no control."),
            "Values of what is no control.",
            {"height": "0"},
            default=Stand(),
        ),
        Field(
            "controls",
            Listing(_CONTROL, least=1, most=6, noun="control"),
            "What can be changed.",
            [
                {
                    "of": "load",
                    "label": "Dust in the filter",
                    "unit": "%",
                    "range": {"from": "0", "to": "100", "step": "10"},
                    "start": "0",
                }
            ],
        ),
        Field(
            "readings",
            Listing(_READING, least=1, most=6, noun="reading"),
            "What can be read off.",
            [{"of": "flow", "label": "Flow", "unit": "L/min"}],
        ),
    ],
    fixed={"kind": "fan"},
    title="fan bench",
)

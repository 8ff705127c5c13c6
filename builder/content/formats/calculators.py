"""What calculators/ID.yml may hold."""

from __future__ import annotations

from journeybook.content.arithmetic import MOST_CHARACTERS
from journeybook.content.formats.parts import ID, LINE, SENTENCES, source_field
from journeybook.content.model.calculators import Calculator, CalculatorInput, CalculatorResult, Preset
from journeybook.source.listing import Listing
from journeybook.source.scalars import Text, Whole
from journeybook.source.shapes import Field, Record

MOST_INPUTS = 8
"""So many that the corners of their ranges, two to that power, can all be tried."""
_NUMBER = Text(100)
_UNIT = Field("unit", Text(40), "The unit shown beside it.", "mm", default="")

_PRESET = Record(
    Preset,
    "choice",
    [
        Field("value", _NUMBER, "The number.", "25"),
        Field("label", LINE, "What it is called.", "Mild steel"),
    ],
)

_INPUT = Record(
    CalculatorInput,
    "input",
    [
        Field("id", ID, "What formulas call it, with `_` for a hyphen.", "diameter"),
        Field("label", LINE, "What is to be put in.", "Diameter of the drill"),
        _UNIT,
        Field("least", _NUMBER, "The smallest number that is taken.", "1", default=""),
        Field("most", _NUMBER, "The largest number that is taken.", "20", default=""),
        Field("start", _NUMBER, "What stands there at first; a number or `{profile.NAME}`.", "10"),
        Field("places", Whole(0, 6), "How many decimals may be typed.", 1, default=0),
        Field(
            "choices",
            Listing(_PRESET, least=2, most=12, noun="choice"),
            "The only values there are, in place of `least` and `most`.",
            [{"value": "25", "label": "Mild steel"}, {"value": "60", "label": "Aluminium"}],
            default=(),
        ),
    ],
    id_key="id",
)

_RESULT = Record(
    CalculatorResult,
    "result",
    [
        Field("id", ID, "What later formulas call it, with `_` for a hyphen.", "turns"),
        Field("label", LINE, "What comes out.", "Speed of the spindle"),
        _UNIT,
        Field(
            "formula",
            Text(MOST_CHARACTERS),
            "Arithmetic over inputs, results above and values of the sheets.",
            "speed * 1000 / (3.1416 * diameter)",
        ),
        Field("places", Whole(0, 6), "To how many decimals it is shown.", 0, default=0),
        Field("note", SENTENCES, "What has to be known to read it.", "Set the next lower speed.", default=""),
    ],
    id_key="id",
)

CALCULATOR = Record(
    Calculator,
    "calculator",
    [
        Field("title", LINE, "What it works out.", "How fast the spindle turns"),
        Field("intro", SENTENCES, "What goes in and what comes out.", "From cutting speed and diameter."),
        Field(
            "caution",
            SENTENCES,
            "What the result must not be taken for; shown above it, always.",
            "For planning. The chart on the machine counts.",
        ),
        source_field(),
        Field(
            "inputs",
            Listing(_INPUT, least=1, most=MOST_INPUTS, noun="input"),
            "The numbers to put in.",
            [
                {
                    "id": "diameter",
                    "label": "Diameter",
                    "unit": "mm",
                    "least": "1",
                    "most": "20",
                    "start": "10",
                }
            ],
        ),
        Field(
            "results",
            Listing(_RESULT, least=1, most=12, noun="result"),
            "The numbers that come out, in order.",
            [{"id": "rim", "label": "Girth", "unit": "mm", "formula": "3.1416 * diameter"}],
        ),
    ],
)

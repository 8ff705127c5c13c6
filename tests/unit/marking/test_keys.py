"""A question becomes a key of the shape that the contract gives."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from pillar_drill import BANK, HEIGHT, JAM, MATCH, ORDER, PRACTICE, SEVERAL, SPEED, course

from journeybook.content.model import Rule, Slip
from journeybook.marking.keys import lower
from journeybook.marking.number_key import NoKey
from journeybook.marking.precedence import Circle


def key(question: Any) -> dict[str, Any]:
    return lower(question, course())


def test_a_choice_names_its_options_and_the_right_one() -> None:
    assert key(PRACTICE) == {"kind": "choice", "options": ["a", "b"], "right": "a"}


def test_choices_list_the_right_ones_in_the_order_of_the_options() -> None:
    shuffled = replace(SEVERAL, right=("bent", "crack", "screw"))
    assert key(shuffled) == {
        "kind": "choices",
        "options": ["crack", "dust", "screw", "bent", "old"],
        "right": ["crack", "screw", "bent"],
        "whole": False,
    }


def test_choices_that_ask_a_critical_fact_are_all_or_nothing() -> None:
    assert key(replace(SEVERAL, critical="isolate-first"))["whole"] is True


def test_an_order_holds_the_closure_and_the_critical_pairs_as_stated() -> None:
    short = replace(
        ORDER,
        steps=ORDER.steps[:3],
        rules=(
            Rule(first="loosen", then=("slide",), place=BANK),
            Rule(first="isolate", then=("loosen",), critical=True, place=BANK),
        ),
    )
    assert key(short) == {
        "kind": "order",
        "steps": ["isolate", "loosen", "slide"],
        "before": [["isolate", "loosen"], ["isolate", "slide"], ["loosen", "slide"]],
        "critical": [["isolate", "loosen"]],
    }


def test_rules_in_a_circle_have_no_key() -> None:
    circle = (*ORDER.rules, Rule(first="start", then=("loosen",), place=BANK))
    with pytest.raises(Circle) as raised:
        key(replace(ORDER, rules=circle))
    assert raised.value.steps == ("loosen", "slide", "tighten", "start")


def test_a_match_holds_its_pairs_and_every_answer() -> None:
    assert key(MATCH) == {
        "kind": "match",
        "items": ["collar", "sleeve"],
        "answers": ["holds", "covers", "cools"],
        "pairs": {"collar": "holds", "sleeve": "covers"},
    }


def test_a_number_holds_exact_factors_and_an_interval() -> None:
    assert key(HEIGHT) == {
        "kind": "number",
        "unit": "mm",
        "unit-needed": True,
        "units": {"mm": "1", "cm": "10", "in": "127/5"},
        "variants": [{"low": "5", "high": "7"}],
    }


def test_a_number_without_a_unit_accepts_none() -> None:
    assert key(replace(HEIGHT, unit="", units=(), unit_needed=False))["units"] == {}


def test_each_variant_is_worked_out_exactly_from_the_kit_sheet_with_its_slips() -> None:
    # 25 * 1000 / 31.4 = 125000/157, three percent either way; without pi 2500, three percent either way.
    assert key(SPEED)["variants"][0] == {
        "low": "121250/157",
        "high": "128750/157",
        "slips": [{"low": "2425", "high": "2575"}],
    }
    assert len(key(SPEED)["variants"]) == 2


def test_a_percentage_of_a_negative_number_still_widens_the_interval() -> None:
    below_zero = replace(HEIGHT, right="-10", tolerance="10 %")
    assert key(below_zero)["variants"] == [{"low": "-11", "high": "-9"}]


@pytest.mark.parametrize(
    ("change", "said"),
    [
        pytest.param({"right": "6 +"}, "ends too early", id="half an expression"),
        pytest.param({"right": "1 / 0"}, "divides by zero", id="division by zero"),
        pytest.param({"right": "{kit.nothing}"}, "`{kit.nothing}` names no value", id="no such value"),
        pytest.param({"tolerance": "1 / 3"}, "1 / 3 is no tolerance", id="a tolerance to work out"),
        pytest.param(
            {"given": ({"gap": "two"},)}, "`two` is not a number alone", id="a given number that is none"
        ),
        pytest.param({"units": ("kg",)}, "kg does not convert into mm", id="a unit of something else"),
        pytest.param(
            {"slips": (Slip(value="x", reason="", place=BANK),)}, "`x` has no value", id="an unknown name"
        ),
    ],
)
def test_a_number_that_cannot_be_worked_out_has_no_key(change: dict[str, Any], said: str) -> None:
    with pytest.raises(NoKey) as raised:
        key(replace(HEIGHT, **change))
    assert said in str(raised.value)


def test_a_drill_holds_where_each_deed_leads_and_what_each_end_is_worth() -> None:
    assert key(JAM) == {
        "kind": "drill",
        "start": "jam",
        "moments": {
            "jam": {
                "stop": {"to": "still", "penalty": 0},
                "lift": {"to": "still", "penalty": 400},
                "hold": {"critical": True},
            }
        },
        "ends": {"still": 1000},
        "deeds": ["stop", "lift", "hold"],
    }

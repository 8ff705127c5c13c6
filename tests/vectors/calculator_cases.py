"""Sums of calculators: every operation, rounding, what stops them."""

from __future__ import annotations

from case import Case, derived, hand

from journeybook.content.arithmetic import Expression, parse


def _given(formulas: dict[str, str], inputs: dict[str, str], places: int = 12) -> Case:
    programs = []
    for name, formula in formulas.items():
        expression = parse(formula)
        assert isinstance(expression, Expression), formula
        programs.append([name, [list(step) for step in expression.postfix]])
    return {"programs": programs, "inputs": inputs, "places": places}


def _one(name: str, formula: str, shown: str, value: str, places: int = 12, **inputs: str) -> Case:
    """A hand-reasoned case of one formula: its exact value and how it is shown."""
    exact = places == 12
    return hand(
        name,
        "calculate",
        _given({"a": formula}, inputs, places),
        {"a": {"value": value, "shown": shown, "exact": exact}},
    )


def calculating() -> list[Case]:
    """What a calculator gives: exact values, and the figures that are shown of them."""
    return [
        _one("a sum", "x + 2.5", "3", "3", x="1/2"),
        _one("a difference goes below zero", "x - 2", "-1.5", "-3/2", x="1/2"),
        _one("products bind before sums", "1 + 2 * x", "7", "7", x="3"),
        _one("equal signs are taken from the left", "12 / 3 / 2 - 1 - 1", "0", "0"),
        _one("a minus before a bracket", "-(x - 4)", "1", "1", x="3"),
        _one("the least of three", "min(3, x, 2)", "-0.5", "-1/2", x="-1/2"),
        _one("the most of three", "max(3, x, 2)", "3.5", "7/2", x="7/2"),
        _one("rounded up", "ceil(x)", "2", "2", x="3672/3500"),
        _one("rounded up below zero", "ceil(x)", "-1", "-1", x="-3/2"),
        _one("a whole number is not rounded up", "ceil(x)", "2", "2", x="2"),
        _one("rounded down", "floor(x)", "6", "6", x="2000/324"),
        _one("rounded down below zero", "floor(x)", "-2", "-2", x="-3/2"),
        _one("a half is rounded away from zero", "round(x)", "3", "3", x="5/2"),
        _one("a half below zero as well", "round(x)", "-3", "-3", x="-5/2"),
        _one("just under a half is not", "round(x)", "2", "2", x="249999999999/100000000000"),
        _one("rounded to two places", "round(x, 2)", "1.01", "101/100", x="201/200"),
        _one("rounded to hundreds", "round(x, -2)", "200", "200", x="150"),
        _one("rounded to hundreds below zero", "round(x, -2)", "-200", "-200", x="-150"),
        _one("shown to one place", "x", "11.4", "125/11", 1, x="125/11"),
        _one("a half is shown away from zero", "x", "0.3", "1/4", 1, x="1/4"),
        _one("a half below zero is shown so too", "x", "-0.3", "-1/4", 1, x="-1/4"),
        _one("what rounds to nothing has no minus", "x", "0", "-1/100", 1, x="-1/100"),
        _one("zeros at the end are not shown", "x", "2", "199/100", 1, x="199/100"),
        _one("no places", "x", "101", "201/2", 0, x="201/2"),
        _one("whole numbers keep their zeros", "x", "100", "199/2", 0, x="199/2"),
        hand(
            "a result uses one above it, unrounded",
            "calculate",
            _given({"third": "x / 3", "whole": "third * 3"}, {"x": "1"}, 2),
            {
                "third": {"value": "1/3", "shown": "0.33", "exact": False},
                "whole": {"value": "1", "shown": "1", "exact": True},
            },
        ),
        hand(
            "division by zero stops it",
            "calculate",
            _given({"a": "1 / (x - 5)"}, {"x": "5"}),
            {"a": {"stopped": "divides-by-zero"}},
        ),
        hand(
            "what rests on a result that stopped stops too, and nothing else",
            "calculate",
            _given({"a": "1 / x", "b": "a + 1", "c": "x + 1"}, {"x": "0"}),
            {
                "a": {"stopped": "divides-by-zero"},
                "b": {"stopped": "divides-by-zero"},
                "c": {"value": "1", "shown": "1", "exact": True},
            },
        ),
        hand(
            "a name in a part that would not matter counts as well",
            "calculate",
            _given({"a": "max(1, 2 / x)"}, {"x": "0"}),
            {"a": {"stopped": "divides-by-zero"}},
        ),
        hand(
            "a number of 700 bits is the largest",
            "calculate",
            _given({"a": "x * 2"}, {"x": str(2**698)}, 0),
            {"a": {"value": str(2**699), "shown": str(2**699), "exact": True}},
        ),
        hand(
            "one bit more is too large",
            "calculate",
            _given({"a": "x * 2"}, {"x": str(2**699)}),
            {"a": {"stopped": "too-large"}},
        ),
        hand(
            "below zero likewise",
            "calculate",
            _given({"a": "x * 2 - 1"}, {"x": str(-(2**699))}),
            {"a": {"stopped": "too-large"}},
        ),
        hand(
            "a denominator of 701 bits is too large",
            "calculate",
            _given({"a": "x / 2"}, {"x": f"1/{2**699}"}),
            {"a": {"stopped": "too-large"}},
        ),
        hand(
            "what cancels is in lowest terms before its size counts",
            "calculate",
            _given({"a": "x * (1 / x)"}, {"x": str(2**600)}),
            {"a": {"value": "1", "shown": "1", "exact": True}},
        ),
        hand(
            "places that are no whole number",
            "calculate",
            _given({"a": "round(x, 1 / 2)"}, {"x": "1"}),
            {"a": {"stopped": "bad-places"}},
        ),
        hand(
            "more than twelve places",
            "calculate",
            _given({"a": "round(x, 13)"}, {"x": "1"}),
            {"a": {"stopped": "bad-places"}},
        ),
        derived(
            "twelve places are enough",
            "calculate",
            _given({"a": "round(x / 7, 12)"}, {"x": "1"}),
        ),
        derived(
            "a long formula",
            "calculate",
            _given(
                {"a": "ceil(s * max(1, ceil(l / c)) / max(1, floor(c / l)))"},
                {"s": "230", "l": "324", "c": "2000"},
            ),
        ),
    ]

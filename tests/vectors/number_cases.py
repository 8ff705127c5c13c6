"""Vectors of numbers: how they are read as typed, and how they are marked."""

from __future__ import annotations

from typing import Any

from case import Case, hand, marked

FLOW = {
    "kind": "number",
    "unit": "L/min",
    "unit-needed": True,
    "units": {"L/min": "1", "m3/h": "50/3"},
    "variants": [
        {"low": "165", "high": "175"},
        {"low": "170", "high": "170", "slips": [{"low": "51/5", "high": "51/5"}]},
    ],
}
COUNT = {
    "kind": "number",
    "unit": "",
    "unit-needed": False,
    "units": {},
    "variants": [{"low": "-3/10", "high": "3/10"}],
}


def numbers() -> list[Case]:
    """Numbers as typed."""

    def flow(name: str, value: str, unit: str, mark: int, read: str, problem: str = "", **more: Any) -> Case:
        return marked(
            name,
            FLOW,
            {"value": value, "unit": unit},
            mark,
            more.pop("variant", 0),
            read=read,
            problem=problem,
            **more,
        )

    def count(name: str, value: str, mark: int, read: str) -> Case:
        return marked(name, COUNT, {"value": value, "unit": ""}, mark, read=read, problem="")

    return [
        flow("in the middle", "170", "L/min", 1000, "170"),
        flow("the lower end is included", "165", "L/min", 1000, "165"),
        flow("the upper end is included, zeros or not", "175.00", "L/min", 1000, "175.00"),
        flow("just below", "164.99", "L/min", 0, "164.99"),
        flow("just above", "175.0000000001", "L/min", 0, "175.0000000001"),
        flow("another unit: 10.2 m3/h is 170 L/min", "10,2", "m3/h", 1000, "10.2"),
        flow("the lower end in another unit: 9.9 m3/h is 165 L/min exactly", "9.9", "m3/h", 1000, "9.9"),
        flow("a unit is part of the skill", "170", "", 0, "170", "unit-missing"),
        flow("a unit that is not on the list", "170", "psi", 0, "170", "unit-unknown"),
        flow("a name that every object has is no unit", "170", "constructor", 0, "170", "unit-unknown"),
        flow("could be a thousand, asked again", "1,000", "L/min", 0, "", "ambiguous"),
        flow("what was typed is said before what is missing", "1.000", "", 0, "", "ambiguous"),
        flow("a slip with a known cause is named", "10.2", "L/min", 0, "10.2", variant=1, slip=0),
        flow("wrong without a known cause", "10.3", "L/min", 0, "10.3", variant=1),
        flow("exact where there is no tolerance", "170,0", "L/min", 1000, "170.0", variant=1),
        marked("0.1 + 0.2 is at most 0.3", COUNT, {"value": "0.3", "unit": ""}, 1000, read="0.3", problem=""),
        count("a minus", "-0.3", 1000, "-0.3"),
        count("a typographic minus", "−0,3", 1000, "-0.3"),
        count("a plus", "+0.3", 1000, "0.3"),
        count("one beyond the end", "-.31", 0, "-0.31"),
        marked(
            "a unit where there is none",
            COUNT,
            {"value": "0", "unit": "L"},
            0,
            read="0",
            problem="unit-unknown",
        ),
        marked("no answer", COUNT, None, 0, read="", problem="empty"),
        marked(
            "a number that is not a text", COUNT, {"value": 1, "unit": ""}, 0, read="", problem="malformed"
        ),
        marked(
            "a member too many", COUNT, {"value": "1", "unit": "", "x": ""}, 0, read="", problem="malformed"
        ),
        marked("a member missing", COUNT, {"value": "1"}, 0, read="", problem="malformed"),
        marked("a bare text", COUNT, "1", 0, read="", problem="malformed"),
    ]


def typing() -> list[Case]:
    """How a typed number is read."""
    table = [
        ("170", "", "170"), (" 170 ", "", "170"), ("\u00a0170\u202f", "", "170"), ("\u2009170", "", "170"),
        ("170\n", "", "170"), ("007", "", "7"), ("0", "", "0"), ("000", "", "0"), ("-0", "", "-0"),
        ("5.", "", "5"), (".5", "", "0.5"), (",50", "", "0.50"), ("10,20", "", "10.20"), ("−5", "", "-5"),
        ("0,125", "", "0.125"), ("0.125", "", "0.125"), ("01,125", "", "1.125"), ("1234,567", "", "1234.567"),
        ("1,0000", "", "1.0000"), ("1,00", "", "1.00"),
        ("1,000", "ambiguous", ""), ("1.000", "ambiguous", ""), ("12.345", "ambiguous", ""),
        ("999,999", "ambiguous", ""), ("-1,000", "ambiguous", ""), ("+1.000", "ambiguous", ""),
        ("", "empty", ""), ("   ", "empty", ""), ("\u00a0", "empty", ""),
        ("1 000", "not-a-number", ""), ("1\u00a0000", "not-a-number", ""), ("1\u2009000", "not-a-number", ""),
        ("1\u202f000", "not-a-number", ""), ("- 5", "not-a-number", ""), ("1.000,5", "not-a-number", ""),
        ("1,000,000", "not-a-number", ""), ("1e3", "not-a-number", ""), ("0x10", "not-a-number", ""),
        ("--5", "not-a-number", ""), ("+", "not-a-number", ""), (".", "not-a-number", ""),
        ("-,", "not-a-number", ""),
        ("170 L/min", "not-a-number", ""), ("½", "not-a-number", ""), ("٣", "not-a-number", ""),
        ("１", "not-a-number", ""),
        ("NaN", "not-a-number", ""), ("Infinity", "not-a-number", ""), ("1'000", "not-a-number", ""),
        ("\ufeff5", "not-a-number", ""), ("\u001c5", "not-a-number", ""), ("\u00855", "not-a-number", ""),
        ("–5", "not-a-number", ""), ("1\n2", "not-a-number", ""),
        ("123456789012345", "", "123456789012345"), ("1234567890123456", "too-long", ""),
        ("0.00000000000001", "", "0.00000000000001"), ("0.000000000000001", "too-long", ""),
    ]  # fmt: skip
    return [
        hand(f"{text!a} is {problem or read}", "typed", {"text": text}, {"problem": problem, "read": read})
        for text, problem, read in table
    ]

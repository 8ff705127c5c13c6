"""Writes the vectors that Python and JavaScript both run: ``python tests/vectors/make_vectors.py``.

``hand(...)`` cases carry an expectation that was worked out on paper or comes from a published source; writing fails
where the Python disagrees. ``derived(...)`` cases freeze what Python gives today, so that neither language drifts.
"""

from __future__ import annotations

import json
from hashlib import sha256
from pathlib import Path
from typing import Any

from operations import OPERATIONS

HERE = Path(__file__).parent
Case = dict[str, Any]

CHOICE = {"kind": "choice", "options": ["a", "b", "c"], "right": "b"}
FIVE = {"kind": "choices", "options": ["a", "b", "c", "d", "e"], "right": ["a", "b", "c"], "whole": False}
WHOLE = FIVE | {"whole": True}
# 0<1<2, 0<3<4, 2<5, 4<5, 5<6, 5<7: the example of Kendall's tau against precedence, its closure written out.
NETWORK = {
    "kind": "order",
    "steps": ["s0", "s1", "s2", "s3", "s4", "s5", "s6", "s7"],
    "before": [
        *(["s0", f"s{then}"] for then in (1, 2, 3, 4, 5, 6, 7)),
        *(["s1", f"s{then}"] for then in (2, 5, 6, 7)),
        *(["s2", f"s{then}"] for then in (5, 6, 7)),
        *(["s3", f"s{then}"] for then in (4, 5, 6, 7)),
        *(["s4", f"s{then}"] for then in (5, 6, 7)),
        *(["s5", f"s{then}"] for then in (6, 7)),
    ],
    "critical": [["s0", "s1"]],
}
PAIR = {"kind": "order", "steps": ["a", "x", "b"], "before": [["a", "b"]], "critical": []}
MATCH = {
    "kind": "match",
    "items": ["i1", "i2", "i3"],
    "answers": ["a1", "a2", "a3", "a4"],
    "pairs": {"i1": "a1", "i2": "a2", "i3": "a3"},
}
FLOW = {
    "kind": "number",
    "unit": "L/min",
    "unit-needed": True,
    "units": {"L/min": "1", "m3/h": "50/3"},
    "variants": [{"low": "165", "high": "175"}, {"low": "170", "high": "170", "slips": [{"low": "51/5", "high": "51/5"}]}],
}
COUNT = {"kind": "number", "unit": "", "unit-needed": False, "units": {}, "variants": [{"low": "-3/10", "high": "3/10"}]}


def hand(name: str, do: str, given: Case, expect: Any) -> Case:
    """Return a case whose expectation was reasoned out."""
    found = OPERATIONS[do](given)
    if found != expect:
        raise SystemExit(f"{name}\n  expected {expect}\n  found    {found}")
    return {"name": name, "do": do, "given": given, "expect": expect}


def derived(name: str, do: str, given: Case) -> Case:
    """Return a case that freezes what the code gives."""
    return {"name": name, "do": do, "given": given, "expect": OPERATIONS[do](given)}


def marked(name: str, key: Case, answer: Any, mark: int, variant: int = 0, **remarks: Any) -> Case:
    """Return a hand-reasoned case of marking."""
    expect = {"mark": mark, "remarks": {"kind": key["kind"], **remarks}}
    return hand(name, "mark", {"key": key, "variant": variant, "answer": answer}, expect)


def choosing() -> list[Case]:
    """One or several right answers."""
    return [
        marked("the right option earns everything", CHOICE, "b", 1000),
        marked("another option earns nothing", CHOICE, "a", 0),
        marked("no answer earns nothing", CHOICE, None, 0, problem="unanswered"),
        marked("an unknown option is malformed", CHOICE, "z", 0, problem="malformed"),
        marked("a list is malformed where one option is asked", CHOICE, ["b"], 0, problem="malformed"),
        marked("a number is malformed", CHOICE, 1, 0, problem="malformed"),
        # max(0, h/m - f/(k-m)) with m = 3 of k = 5
        marked("all three right: 3/3", FIVE, ["a", "b", "c"], 1000, missed=[], extra=[]),
        marked("two right: 2/3 = 666.67, rounded to 667", FIVE, ["a", "b"], 667, missed=["c"], extra=[]),
        marked("three right and one false: 1 - 1/2", FIVE, ["a", "b", "c", "d"], 500, missed=[], extra=["d"]),
        marked("everything: 1 - 2/2", FIVE, ["a", "b", "c", "d", "e"], 0, missed=[], extra=["d", "e"]),
        marked("nothing ticked: 0", FIVE, [], 0, missed=["a", "b", "c"], extra=[]),
        marked("one right and one false: 1/3 - 1/2, floored", FIVE, ["a", "e"], 0, missed=["b", "c"], extra=["e"]),
        marked("the order of ticking does not matter", FIVE, ["c", "a", "b"], 1000, missed=[], extra=[]),
        marked("one option twice is malformed", FIVE, ["a", "a"], 0, problem="malformed"),
        marked("an unknown option among others is malformed", FIVE, ["a", "z"], 0, problem="malformed"),
        marked("a text is malformed where a list is asked", FIVE, "a", 0, problem="malformed"),
        marked("must-pass: all three right", WHOLE, ["a", "b", "c"], 1000, missed=[], extra=[]),
        marked("must-pass: one missed earns nothing", WHOLE, ["a", "b"], 0, missed=["c"], extra=[]),
        marked("must-pass: one too many earns nothing", WHOLE, ["a", "b", "c", "d"], 0, missed=[], extra=["d"]),
    ]


def ordering() -> list[Case]:
    """Steps to put in order."""
    def network(order: str) -> list[str]:
        return [f"s{step}" for step in order]

    return [
        marked("any order that keeps the rules earns everything", NETWORK, network("03142576"), 1000, broken=[], critical=[], moves=0),
        # |R| = 23; 5 before 3 and 5 before 4 are reversed: 1 - 4/23 = 19/23 = 826.09; moving 5 mends both.
        marked(
            "two of 23 pairs broken: 19/23, and one step to move",
            NETWORK, network("01253467"), 826, broken=[["s3", "s5"], ["s4", "s5"]], critical=[], moves=1,
        ),
        marked("a broken critical pair earns nothing", NETWORK, network("10234567"), 0, broken=[["s0", "s1"]], critical=[["s0", "s1"]], moves=1),
        marked("the only pair reversed: 1 - 2/1, floored; one step to move", PAIR, ["b", "x", "a"], 0, broken=[["a", "b"]], critical=[], moves=1),
        marked("a step between does not matter", PAIR, ["x", "a", "b"], 1000, broken=[], critical=[], moves=0),
        # Backwards, one step can stay: of eight steps the widest set without a rule between two is {1, 3} or {2, 4} or {6, 7}.
        marked(
            "backwards: 8 less the widest antichain of 2", NETWORK | {"critical": []}, network("76543210"), 0,
            broken=NETWORK["before"], critical=[], moves=6,
        ),
        marked("a step left out is malformed", PAIR, ["a", "b"], 0, problem="malformed"),
        marked("a step twice is malformed", PAIR, ["a", "b", "b"], 0, problem="malformed"),
        marked("an unknown step is malformed", PAIR, ["a", "b", "z"], 0, problem="malformed"),
        marked("no answer", PAIR, None, 0, problem="unanswered"),
    ]


def matching() -> list[Case]:
    """Items with one partner each."""
    return [
        marked("every pair right", MATCH, {"i1": "a1", "i2": "a2", "i3": "a3"}, 1000, wrong=[]),
        marked("two of three: 666.67, rounded to 667", MATCH, {"i1": "a1", "i2": "a2", "i3": "a4"}, 667, wrong=["i3"]),
        marked("one of three: 333.33, rounded to 333", MATCH, {"i1": "a1"}, 333, wrong=["i2", "i3"]),
        marked("nothing matched", MATCH, {}, 0, wrong=["i1", "i2", "i3"]),
        marked("an answer that serves twice is malformed", MATCH, {"i1": "a1", "i2": "a1"}, 0, problem="malformed"),
        marked("an unknown item is malformed", MATCH, {"i9": "a1"}, 0, problem="malformed"),
        marked("an unknown answer is malformed", MATCH, {"i1": "a9"}, 0, problem="malformed"),
        marked("a list is malformed", MATCH, ["a1"], 0, problem="malformed"),
        marked("an item matched with nothing is malformed", MATCH, {"i1": None}, 0, problem="malformed"),
    ]


def numbers() -> list[Case]:
    """Numbers as typed."""
    def flow(name: str, value: str, unit: str, mark: int, read: str, problem: str = "", **more: Any) -> Case:
        return marked(name, FLOW, {"value": value, "unit": unit}, mark, more.pop("variant", 0), read=read, problem=problem, **more)

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
        marked("a unit where there is none", COUNT, {"value": "0", "unit": "L"}, 0, read="0", problem="unit-unknown"),
        marked("no answer", COUNT, None, 0, read="", problem="empty"),
        marked("a number that is not a text", COUNT, {"value": 1, "unit": ""}, 0, read="", problem="malformed"),
        marked("a member too many", COUNT, {"value": "1", "unit": "", "x": ""}, 0, read="", problem="malformed"),
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
        ("--5", "not-a-number", ""), ("+", "not-a-number", ""), (".", "not-a-number", ""), ("-,", "not-a-number", ""),
        ("170 L/min", "not-a-number", ""), ("½", "not-a-number", ""), ("٣", "not-a-number", ""), ("１", "not-a-number", ""),
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


def streams() -> list[Case]:
    """Seeded streams, ranks and shuffles."""
    sixty = [f"q{number:03}" for number in range(60)]
    return [
        hand(
            "xoshiro128** 1.1 from 1, 2, 3, 4: the vector of the rand_xoshiro crate (rust-random/rngs)",
            "stream", {"state": [1, 2, 3, 4], "count": 10},
            [11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804],
        ),
        hand(
            "rank: the first eight of sixty by SHA-256", "rank", {"seed": "form-A-2026", "questions": sixty, "count": 8},
            ["q049", "q003", "q006", "q011", "q002", "q010", "q017", "q042"],
        ),
        hand(
            "rank does not depend on the order of files", "rank",
            {"seed": "form-A-2026", "questions": sixty[::-1], "count": 8},
            ["q049", "q003", "q006", "q011", "q002", "q010", "q017", "q042"],
        ),
        hand(
            "shuffle of 0 to 11", "shuffle-from-digest",
            {"seed": "form-A-2026", "things": [str(number) for number in range(12)]},
            ["4", "5", "1", "11", "8", "0", "10", "3", "6", "7", "2", "9"],
        ),
        derived(
            "bounded draws, the largest bound included", "below",
            {"seed": "s", "question": "flow-03", "purpose": "variant", "bounds": [1, 2, 3, 6, 7, 52, 1000, 3_000_000_000, 1 << 32]},
        ),
        derived("a seed outside ASCII", "below", {"seed": "Prüfung 🜂", "question": "a", "purpose": "options", "bounds": [100] * 6}),
        hand("SHA-256 of abc (FIPS 180-4)", "sha256", {"text": "abc"}, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
    ]


PLAN = {
    "form-algorithm": 1,
    "gates": [
        {"fact": "isolate-first", "questions": ["gate-1", "gate-2"]},
        {"fact": "guard-on", "questions": ["gate-3"]},
    ],
    "cells": [
        {"outcome": "guard-set", "level": "recall", "draw": 2, "questions": ["cell-1", "cell-2", "cell-3", "cell-4"]},
        {"outcome": "guard-set", "level": "apply", "draw": 1, "questions": ["cell-5"]},
    ],
    "questions": {
        "gate-1": {"kind": "choice", "options": ["a", "b", "c"], "shuffle": True, "variants": 1},
        "gate-2": {"kind": "choice", "options": ["a", "b"], "shuffle": False, "variants": 1},
        "gate-3": {"kind": "order", "options": ["a", "x", "b"], "shuffle": True, "variants": 1, "before": [["a", "b"]]},
        "cell-1": {"kind": "number", "options": [], "shuffle": False, "variants": 4},
        "cell-2": {"kind": "match", "options": ["a1", "a2", "a3"], "shuffle": True, "variants": 1},
        "cell-3": {"kind": "choices", "options": ["a", "b", "c", "d"], "shuffle": True, "variants": 1},
        "cell-4": {"kind": "choice", "options": ["a", "b", "c"], "shuffle": True, "variants": 1},
        "cell-5": {"kind": "choice", "options": ["a", "b"], "shuffle": True, "variants": 1},
    },
}  # fmt: skip


def forms() -> list[Case]:
    """Drawn forms."""
    seeds = ["form-A-2026", "form-B-2026", "Ünïcode 🜂", "s"]
    return [
        *(derived(f"seed {seed}", "form", {"plan": PLAN, "seed": seed, "avoid": []}) for seed in seeds),
        derived("what was seen is avoided", "form", {"plan": PLAN, "seed": "s", "avoid": ["gate-1", "cell-1", "cell-2"]}),
        derived("unless the others do not suffice", "form", {"plan": PLAN, "seed": "s", "avoid": ["cell-5", "cell-1", "cell-2", "cell-3"]}),
        hand("options that keep their order", "arranged", {"shape": PLAN["questions"]["gate-2"], "seed": "s", "question": "gate-2"}, ["a", "b"]),
        *(
            hand(
                f"two steps with a rule can only start backwards (seed {number})", "arranged",
                {
                    "shape": {"kind": "order", "options": ["a", "b"], "shuffle": True, "variants": 1, "before": [["a", "b"]]},
                    "seed": str(number), "question": "q",
                },
                ["b", "a"],
            )
            for number in range(4)
        ),
    ]  # fmt: skip


def results() -> list[Case]:
    """A whole check. Three questions; the cut of 80 % is 2400 of 3000."""
    keys = {"gate": CHOICE, "several": FIVE, "flow": FLOW}
    given = {
        "plan": {
            "form-algorithm": 1,
            "gates": [{"fact": "isolate-first", "questions": ["other-gate", "gate"]}],
            "cells": [], "questions": {},
        },
        "percent": 80,
        "outcomes": {"gate": "guard-set", "several": "guard-set", "flow": "flow-check"},
        "keys": keys,
        "form": [{"q": "several", "variant": 0, "options": []}, {"q": "gate", "variant": 0, "options": []}, {"q": "flow", "variant": 1, "options": []}],
    }  # fmt: skip

    def case(name: str, answers: Case, several: int, gate: int, flow: int, passed: bool) -> Case:
        expect = {
            "marks": several + gate + flow, "of": 3000, "percent": 80, "cut": 2400, "passed": passed,
            "must-pass": [{"fact": "isolate-first", "question": "gate", "mark": gate}],
            "outcomes": {"guard-set": {"marks": several + gate, "of": 2000}, "flow-check": {"marks": flow, "of": 1000}},
            "questions": {"several": several, "gate": gate, "flow": flow},
        }  # fmt: skip
        return hand(name, "result", {**given, "answers": answers}, expect)

    right_flow = {"value": "170", "unit": "L/min"}
    return [
        case("everything right", {"several": ["a", "b", "c"], "gate": "b", "flow": right_flow}, 1000, 1000, 1000, True),
        case("2667 of 3000 passes", {"several": ["a", "b"], "gate": "b", "flow": right_flow}, 667, 1000, 1000, True),
        case("below the cut", {"several": ["a"], "gate": "b", "flow": right_flow}, 333, 1000, 1000, False),
        case("a missed must-pass question fails the check", {"several": ["a", "b", "c"], "gate": "a", "flow": right_flow}, 1000, 0, 1000, False),
        case("nothing answered", {}, 0, 0, 0, False),
    ]  # fmt: skip


def canonical_bytes() -> list[Case]:
    """RFC 8785 as far as evidence may go."""
    weird = {"€": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
             "😀": "Emoji: Grinning Face", "\u0080": "Control", "ö": "Latin Small Letter O With Diaeresis"}  # fmt: skip

    def written(name: str, value: Any, text: str) -> Case:
        return hand(name, "canonical-write", {"value": value}, {"value": text})

    def refused(name: str, text: str) -> Case:
        return hand(name, "canonical-read", {"text": text}, {"refused": True})

    deep = "[" * 33 + "]" * 33
    return [
        written(
            "keys sort by UTF-16 code units (RFC 8785, 3.2.3)", weird,
            '{"\\r":"Carriage Return","1":"One","\u0080":"Control","ö":"Latin Small Letter O With Diaeresis",'
            '"€":"Euro Sign","😀":"Emoji: Grinning Face","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
        ),
        written(
            "texts escape no more than they must (RFC 8785, 3.2.2.2)", "€$\u000f\nA'B\"\\\\\"/\u007f\b\t\f\r",
            '"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/\u007f\\b\\t\\f\\r"',
        ),
        written("literals", [None, True, False], "[null,true,false]"),
        written("integers", [0, -1, 2**53 - 1, -(2**53 - 1)], "[0,-1,9007199254740991,-9007199254740991]"),
        written("nothing", {}, "{}"),
        written("depth 32", json.loads("[" * 32 + "]" * 32), "[" * 32 + "]" * 32),
        hand("depth 33 is refused", "canonical-write", {"value": json.loads(deep)}, {"refused": "depth"}),
        hand("a half is refused", "canonical-write", {"value": 0.5}, {"refused": "number"}),
        hand("reading gives the contents", "canonical-read", {"text": '{"a":[1,"ö"]}'}, {"value": {"a": [1, "ö"]}}),
        refused("a key given twice", '{"a":1,"a":1}'), refused("keys out of order", '{"b":1,"a":1}'),
        refused("a space", '{"a": 1}'), refused("a line end", "1\n"), refused("a fraction", "1.5"),
        refused("a fraction that is whole", "1.0"), refused("an exponent", "1e3"), refused("minus zero", "-0"),
        refused("an integer beyond 2^53 - 1", "9007199254740992"), refused("a very long integer", "9" * 5000),
        refused("half of a surrogate pair", '"\\ud800"'), refused("an escape that need not be", '"\\u0041"'),
        refused("an escaped slash", '"\\/"'), refused("not a number", "NaN"), refused("infinity", "Infinity"),
        refused("nothing at all", ""), refused("cut short", '{"a":'), refused("a comma too many", "[1,]"),
        refused("too deep", deep), refused("two values", "1 2"), refused("a byte order mark", "\ufeff1"),
    ]  # fmt: skip


def records() -> list[Case]:
    """Attempt files and fingerprints."""
    facts = {
        "course": "pillar-drill", "version": "1.0", "digest": "00" * 32, "profile": "us", "language": "en",
        "seed": "form-A-2026", "avoid": ["cell-1"],
        "form": [{"q": "cell-5", "variant": 0, "options": ["b", "a"]}, {"q": "cell-1", "variant": 2, "options": []}],
        "answers": {"cell-5": "a", "cell-1": {"value": "10,2", "unit": "m3/h"}},
        "shown": ["cell-5", "cell-1"], "started": "2026-11-24T09:00:00Z", "ended": "2026-11-24T09:20:00Z",
        "card": {"id": "c-1", "name": "Åsa O'Neill", "workplace": "Basin \"Lane\""},
    }  # fmt: skip
    text = (
        '{"answers":{"cell-1":{"unit":"m3/h","value":"10,2"},"cell-5":"a"},"avoid":["cell-1"],'
        '"card":{"id":"c-1","name":"Åsa O\'Neill","workplace":"Basin \\"Lane\\""},"course":"pillar-drill",'
        f'"digest":"{"00" * 32}","ended":"2026-11-24T09:20:00Z",'
        '"form":[{"options":["b","a"],"q":"cell-5","variant":0},{"options":[],"q":"cell-1","variant":2}],'
        '"format":"journeybook attempt 1","language":"en","profile":"us","seed":"form-A-2026",'
        '"shown":["cell-5","cell-1"],"started":"2026-11-24T09:00:00Z","version":"1.0"}'
    )
    return [
        # 80 bits of SHA-256("abc") are ba7816bf8f01cfea4141; in groups of five bits 23 9 24 5 20 31 28 31 16 7 7 29 9 16 10 1.
        hand("the fingerprint of abc", "fingerprint", {"text": "abc"}, base32_by_hand("ba7816bf8f01cfea4141")),
        hand(
            "an attempt file", "attempt-file", {"facts": facts},
            {"text": text, "fingerprint": base32_by_hand(sha256(text.encode()).hexdigest()[:20])},
        ),
    ]  # fmt: skip


def base32_by_hand(digits: str) -> str:
    """Return hexadecimal digits in RFC 4648 base32, five bits at a time, in groups of four."""
    bits = "".join(f"{int(digit, 16):04b}" for digit in digits)
    letters = ["ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"[int(bits[at : at + 5], 2)] for at in range(0, len(bits), 5)]
    return "-".join("".join(letters[at : at + 4]) for at in range(0, len(letters), 4))


FILES = {
    "mark-choosing": choosing, "mark-ordering": ordering, "mark-matching": matching, "mark-numbers": numbers,
    "typed-numbers": typing, "streams": streams, "forms": forms, "results": results, "canonical": canonical_bytes,
    "records": records,
}  # fmt: skip


def contents(name: str) -> str:
    """Return what the file of that name holds."""
    build = FILES[name]
    cases = build()
    lines = ",\n".join(json.dumps(case, ensure_ascii=True) for case in cases)
    return f'{{"about": {json.dumps(build.__doc__)}, "cases": [\n{lines}\n]}}\n'


if __name__ == "__main__":
    for file in FILES:
        (HERE / f"{file}.json").write_text(contents(file), encoding="utf-8")

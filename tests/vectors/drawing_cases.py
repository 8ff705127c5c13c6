"""Vectors of seeded streams, ranks, forms and whole checks."""

from __future__ import annotations

from case import Case, derived, hand
from marking_cases import CHOICE, FIVE
from number_cases import FLOW

PLAN = {
    "form-algorithm": 1,
    "gates": [
        {"fact": "isolate-first", "questions": ["gate-1", "gate-2"]},
        {"fact": "guard-on", "questions": ["gate-3"]},
    ],
    "cells": [
        {
            "outcome": "guard-set",
            "level": "recall",
            "draw": 2,
            "questions": ["cell-1", "cell-2", "cell-3", "cell-4"],
        },
        {"outcome": "guard-set", "level": "apply", "draw": 1, "questions": ["cell-5"]},
    ],
    "questions": {
        "gate-1": {"kind": "choice", "options": ["a", "b", "c"], "shuffle": True, "variants": 1},
        "gate-2": {"kind": "choice", "options": ["a", "b"], "shuffle": False, "variants": 1},
        "gate-3": {
            "kind": "order",
            "options": ["a", "x", "b"],
            "shuffle": True,
            "variants": 1,
            "before": [["a", "b"]],
        },
        "cell-1": {"kind": "number", "options": [], "shuffle": False, "variants": 4},
        "cell-2": {"kind": "match", "options": ["a1", "a2", "a3"], "shuffle": True, "variants": 1},
        "cell-3": {"kind": "choices", "options": ["a", "b", "c", "d"], "shuffle": True, "variants": 1},
        "cell-4": {"kind": "choice", "options": ["a", "b", "c"], "shuffle": True, "variants": 1},
        "cell-5": {"kind": "choice", "options": ["a", "b"], "shuffle": True, "variants": 1},
    },
}


def streams() -> list[Case]:
    """Seeded streams, ranks and shuffles."""
    sixty = [f"q{number:03}" for number in range(60)]
    return [
        hand(
            "xoshiro128** 1.1 from 1, 2, 3, 4: the vector of the rand_xoshiro crate (rust-random/rngs)",
            "stream",
            {"state": [1, 2, 3, 4], "count": 10},
            [
                11520,
                0,
                5927040,
                70819200,
                2031721883,
                1637235492,
                1287239034,
                3734860849,
                3729100597,
                4258142804,
            ],
        ),
        hand(
            "rank: the first eight of sixty by SHA-256",
            "rank",
            {"seed": "form-A-2026", "questions": sixty, "count": 8},
            ["q049", "q003", "q006", "q011", "q002", "q010", "q017", "q042"],
        ),
        hand(
            "rank does not depend on the order of files",
            "rank",
            {"seed": "form-A-2026", "questions": sixty[::-1], "count": 8},
            ["q049", "q003", "q006", "q011", "q002", "q010", "q017", "q042"],
        ),
        hand(
            "shuffle of 0 to 11",
            "shuffle-from-digest",
            {"seed": "form-A-2026", "things": [str(number) for number in range(12)]},
            ["4", "5", "1", "11", "8", "0", "10", "3", "6", "7", "2", "9"],
        ),
        # 2^32 mod 3,000,000,000 is 1,294,967,296: the first four numbers are below it and are thrown away.
        hand(
            "a bounded draw throws away what would not divide evenly",
            "below-from-state",
            {"state": [1, 2, 3, 4], "bounds": [3_000_000_000]},
            [2031721883],
        ),
        derived(
            "bounded draws, the largest bound included",
            "below",
            {
                "seed": "s",
                "question": "flow-03",
                "purpose": "variant",
                "bounds": [1, 2, 3, 6, 7, 52, 1000, 3_000_000_000, 1 << 32],
            },
        ),
        derived(
            "a seed outside ASCII",
            "below",
            {"seed": "Prüfung 🜂", "question": "a", "purpose": "options", "bounds": [100] * 6},
        ),
        hand(
            "SHA-256 of abc (FIPS 180-4)",
            "sha256",
            {"text": "abc"},
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        ),
    ]


def forms() -> list[Case]:
    """Drawn forms."""
    seeds = ["form-A-2026", "form-B-2026", "Ünïcode 🜂", "s"]
    return [
        *(derived(f"seed {seed}", "form", {"plan": PLAN, "seed": seed, "avoid": []}) for seed in seeds),
        derived(
            "what was seen is avoided",
            "form",
            {"plan": PLAN, "seed": "s", "avoid": ["gate-1", "cell-1", "cell-2"]},
        ),
        derived(
            "unless the others do not suffice",
            "form",
            {"plan": PLAN, "seed": "s", "avoid": ["cell-5", "cell-1", "cell-2", "cell-3"]},
        ),
        hand(
            "options that keep their order",
            "arranged",
            {"shape": PLAN["questions"]["gate-2"], "seed": "s", "question": "gate-2"},
            ["a", "b"],
        ),
        *(
            hand(
                f"two steps with a rule can only start backwards (seed {number})",
                "arranged",
                {
                    "shape": {
                        "kind": "order",
                        "options": ["a", "b"],
                        "shuffle": True,
                        "variants": 1,
                        "before": [["a", "b"]],
                    },
                    "seed": str(number),
                    "question": "q",
                },
                ["b", "a"],
            )
            for number in range(4)
        ),
    ]


def results() -> list[Case]:
    """A whole check. Three questions; the cut of 80 % is 2400 of 3000."""
    keys = {"gate": CHOICE, "several": FIVE, "flow": FLOW}
    given = {
        "plan": {
            "form-algorithm": 1,
            "gates": [{"fact": "isolate-first", "questions": ["other-gate", "gate"]}],
            "cells": [],
            "questions": {},
        },
        "percent": 80,
        "outcomes": {"gate": "guard-set", "several": "guard-set", "flow": "flow-check"},
        "keys": keys,
        "form": [
            {"q": "several", "variant": 0, "options": []},
            {"q": "gate", "variant": 0, "options": []},
            {"q": "flow", "variant": 1, "options": []},
        ],
    }

    def case(
        name: str, answers: Case, several: int, gate: int, flow: int, passed: bool, percent: int = 80
    ) -> Case:
        expect = {
            "marks": several + gate + flow,
            "of": 3000,
            "percent": percent,
            "cut": percent * 30,
            "passed": passed,
            "must-pass": [{"fact": "isolate-first", "question": "gate", "mark": gate}],
            "critical": [],
            "outcomes": {
                "guard-set": {"marks": several + gate, "of": 2000},
                "flow-check": {"marks": flow, "of": 1000},
            },
            "questions": {"several": several, "gate": gate, "flow": flow},
        }
        return hand(name, "result", {**given, "percent": percent, "answers": answers}, expect)

    right_flow = {"value": "170", "unit": "L/min"}
    return [
        case(
            "everything right",
            {"several": ["a", "b", "c"], "gate": "b", "flow": right_flow},
            1000,
            1000,
            1000,
            True,
        ),
        case(
            "2667 of 3000 passes",
            {"several": ["a", "b"], "gate": "b", "flow": right_flow},
            667,
            1000,
            1000,
            True,
        ),
        case(
            "exactly the cut: 1500 of 3000 at 50 %",
            {"several": ["a", "b", "c", "d"], "gate": "b"},
            500,
            1000,
            0,
            True,
            50,
        ),
        case("below the cut", {"several": ["a"], "gate": "b", "flow": right_flow}, 333, 1000, 1000, False),
        case(
            "a missed must-pass question fails the check",
            {"several": ["a", "b", "c"], "gate": "a", "flow": right_flow},
            1000,
            0,
            1000,
            False,
        ),
        case("nothing answered", {}, 0, 0, 0, False),
    ]

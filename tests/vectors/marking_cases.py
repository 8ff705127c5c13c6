"""Vectors of marking where something is chosen, put in order or matched."""

from __future__ import annotations

from case import Case, marked

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
CROSSED = {
    "kind": "order",
    "steps": ["a", "b", "c", "d"],
    "before": [["a", "c"], ["a", "d"], ["b", "c"]],
    "critical": [],
}
PAIR = {"kind": "order", "steps": ["a", "x", "b"], "before": [["a", "b"]], "critical": []}
MATCH = {
    "kind": "match",
    "items": ["i1", "i2", "i3"],
    "answers": ["a1", "a2", "a3", "a4"],
    "pairs": {"i1": "a1", "i2": "a2", "i3": "a3"},
}


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
        marked(
            "one right and one false: 1/3 - 1/2, floored", FIVE, ["a", "e"], 0, missed=["b", "c"], extra=["e"]
        ),
        marked("the order of ticking does not matter", FIVE, ["c", "a", "b"], 1000, missed=[], extra=[]),
        marked("one option twice is malformed", FIVE, ["a", "a"], 0, problem="malformed"),
        marked("an unknown option among others is malformed", FIVE, ["a", "z"], 0, problem="malformed"),
        marked("a text is malformed where a list is asked", FIVE, "a", 0, problem="malformed"),
        marked("must-pass: all three right", WHOLE, ["a", "b", "c"], 1000, missed=[], extra=[]),
        marked("must-pass: one missed earns nothing", WHOLE, ["a", "b"], 0, missed=["c"], extra=[]),
        marked(
            "must-pass: one too many earns nothing", WHOLE, ["a", "b", "c", "d"], 0, missed=[], extra=["d"]
        ),
    ]


def ordering() -> list[Case]:
    """Steps to put in order."""

    def network(order: str) -> list[str]:
        return [f"s{step}" for step in order]

    return [
        marked(
            "any order that keeps the rules earns everything",
            NETWORK,
            network("03142576"),
            1000,
            broken=[],
            critical=[],
            moves=0,
        ),
        # |R| = 23; 5 before 3 and 5 before 4 are reversed: 1 - 4/23 = 19/23 = 826.09; moving 5 mends both.
        marked(
            "two of 23 pairs broken: 19/23, and one step to move",
            NETWORK,
            network("01253467"),
            826,
            broken=[["s3", "s5"], ["s4", "s5"]],
            critical=[],
            moves=1,
        ),
        marked(
            "a broken critical pair earns nothing",
            NETWORK,
            network("10234567"),
            0,
            broken=[["s0", "s1"]],
            critical=[["s0", "s1"]],
            moves=1,
        ),
        marked(
            "the only pair reversed: 1 - 2/1, floored; one step to move",
            PAIR,
            ["b", "x", "a"],
            0,
            broken=[["a", "b"]],
            critical=[],
            moves=1,
        ),
        marked(
            "a step between does not matter", PAIR, ["x", "a", "b"], 1000, broken=[], critical=[], moves=0
        ),
        # Backwards, the steps that can stay have no rule between them: at most two, such as 6 and 7.
        marked(
            "backwards: 8 less the widest antichain of 2",
            NETWORK | {"critical": []},
            network("76543210"),
            0,
            broken=NETWORK["before"],
            critical=[],
            moves=6,
        ),
        # All three pairs are reversed; a and b have no rule between them, nor have c and d: two stay.
        marked(
            "two steps to move, which a greedy matching would take for one",
            CROSSED,
            ["c", "d", "a", "b"],
            0,
            broken=[["a", "c"], ["a", "d"], ["b", "c"]],
            critical=[],
            moves=2,
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
        marked(
            "two of three: 666.67, rounded to 667",
            MATCH,
            {"i1": "a1", "i2": "a2", "i3": "a4"},
            667,
            wrong=["i3"],
        ),
        marked("one of three: 333.33, rounded to 333", MATCH, {"i1": "a1"}, 333, wrong=["i2", "i3"]),
        marked("nothing matched", MATCH, {}, 0, wrong=["i1", "i2", "i3"]),
        marked(
            "an answer that serves twice is malformed",
            MATCH,
            {"i1": "a1", "i2": "a1"},
            0,
            problem="malformed",
        ),
        marked("an unknown item is malformed", MATCH, {"i9": "a1"}, 0, problem="malformed"),
        marked("an unknown answer is malformed", MATCH, {"i1": "a9"}, 0, problem="malformed"),
        marked("a list is malformed", MATCH, ["a1"], 0, problem="malformed"),
        marked("an item matched with nothing is malformed", MATCH, {"i1": None}, 0, problem="malformed"),
    ]

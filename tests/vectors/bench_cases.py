"""Vectors of benches: controls set as asked, and what is read off a table at and between its places."""

from __future__ import annotations

from case import Case, hand, marked

# The load is right from the fourth place on; with the gate open only.
LOAD = {"kind": "setting", "controls": ["load"], "counts": [6], "accepted": [[4], [5]]}
TWO = {"kind": "setting", "controls": ["load", "opening"], "counts": [6, 3], "accepted": [[4, 2], [5, 2]]}


def setting() -> list[Case]:
    """Controls of a bench at their places: all or nothing."""
    return [
        marked("an accepted place earns everything", LOAD, {"load": 4}, 1000),
        marked("another accepted place earns as much", LOAD, {"load": 5}, 1000),
        marked("the place before earns nothing", LOAD, {"load": 3}, 0),
        marked("both controls have to be right together", TWO, {"load": 5, "opening": 2}, 1000),
        marked("one of the two is not enough", TWO, {"load": 5, "opening": 1}, 0),
        marked("the order of the members does not matter", TWO, {"opening": 2, "load": 4}, 1000),
        marked("no answer earns nothing", LOAD, None, 0, problem="unanswered"),
        marked("a control left out is malformed", TWO, {"load": 4}, 0, problem="malformed"),
        marked("a control too many is malformed", LOAD, {"load": 4, "opening": 2}, 0, problem="malformed"),
        marked("a place beyond the end is malformed", LOAD, {"load": 6}, 0, problem="malformed"),
        marked("a place before the first is malformed", LOAD, {"load": -1}, 0, problem="malformed"),
        marked("a place between two is malformed", LOAD, {"load": 4.5}, 0, problem="malformed"),
        marked("a place as a text is malformed", LOAD, {"load": "4"}, 0, problem="malformed"),
        marked("true is no place", LOAD, {"load": True}, 0, problem="malformed"),
        marked("a list is malformed", LOAD, [4], 0, problem="malformed"),
    ]


def reading_off() -> list[Case]:
    """A value at a place of each control, and multilinear between the places."""
    line = {
        "counts": [2, 3],
        "along": [1],
        "steps": [10, 10, 20],
    }  # 10, 20, 40, whatever the first control does
    field = {"counts": [2, 2, 2], "along": [0, 2], "steps": [0, 100, 100, 200]}  # 0, 100 over 200, 400

    def at(name: str, column: Case, places: list[float], value: float) -> Case:
        return hand(name, "read-off", column | {"places": places}, value)

    return [
        at("at the first place", line, [0, 0], 10.0),
        at("at the last place", line, [1, 2], 40.0),
        at("half way between two places", line, [0, 0.5], 15.0),
        at("a quarter of the way", line, [0, 1.25], 25.0),
        at("before the first place it is that of the first", line, [0, -3], 10.0),
        at("beyond the last place it is that of the last", line, [0, 9], 40.0),
        at("a control that does not matter changes nothing", line, [0.5, 1], 20.0),
        at("at a corner of two controls", field, [1, 0, 1], 400.0),
        at("in the middle of four corners: (0 + 100 + 200 + 400) / 4", field, [0.5, 0.7, 0.5], 175.0),
        at("along one edge", field, [0, 0, 0.25], 25.0),
        at("between the other two corners", field, [1, 1, 0.75], 350.0),
        at("a table of one place", {"counts": [1], "along": [], "steps": [7]}, [0], 7.0),
        at("values fall as well as rise", {"counts": [3], "along": [0], "steps": [5, -10, 3]}, [1.5], -3.5),
    ]

"""Vectors of marking where a part is pointed at or units are sorted."""

from __future__ import annotations

from case import Case, marked

SPOT = {"kind": "spot", "spots": ["sleeve", "collar", "knob"], "right": "sleeve"}
# Three places, two units for each.
SIX = {
    "kind": "triage",
    "places": ["use", "mend", "tag-out"],
    "units": ["u1", "u2", "m1", "m2", "t1", "t2"],
    "right": {"u1": "use", "u2": "use", "m1": "mend", "m2": "mend", "t1": "tag-out", "t2": "tag-out"},
    "dangerous": ["t2"],
    "whole": False,
}
TWO = {
    "kind": "triage",
    "places": ["use", "tag-out"],
    "units": ["u1", "t1"],
    "right": {"u1": "use", "t1": "tag-out"},
    "dangerous": [],
    "whole": False,
}
WHOLE = SIX | {"whole": True}
RIGHT = SIX["right"]
NOTHING: dict[str, list[str]] = {"missed": [], "needless": [], "left": [], "dangerous": []}


def pointing() -> list[Case]:
    """One part of a drawing."""
    return [
        marked("the right part earns everything", SPOT, "sleeve", 1000),
        marked("another part earns nothing", SPOT, "knob", 0),
        marked("no answer earns nothing", SPOT, None, 0, problem="unanswered"),
        marked("a part that is not offered is malformed", SPOT, "table", 0, problem="malformed"),
        marked("a list is malformed", SPOT, ["sleeve"], 0, problem="malformed"),
        marked("a number is malformed", SPOT, 0, 0, problem="malformed"),
    ]


def sorting() -> list[Case]:
    """Units into places, from the mildest to the strictest: (2 right - 2 missed - needless) / (2 units)."""

    def sorted_(name: str, mark: int, changed: dict[str, str], key: Case = SIX, **found: list[str]) -> Case:
        assert isinstance(RIGHT, dict)
        return marked(name, key, RIGHT | changed, mark, **(NOTHING | found))

    return [
        sorted_("all right: 12/12", 1000, {}),
        sorted_("one stricter than needed: (10 - 1)/12", 750, {"u1": "mend"}, needless=["u1"]),
        sorted_("by two places costs no more: (10 - 1)/12", 750, {"u1": "tag-out"}, needless=["u1"]),
        sorted_("one missed: (10 - 2)/12 = 666.67, rounded to 667", 667, {"m1": "use"}, missed=["m1"]),
        sorted_(
            "one of each: (8 - 2 - 1)/12 = 416.67, rounded to 417",
            417,
            {"m1": "use", "u2": "mend"},
            missed=["m1"],
            needless=["u2"],
        ),
        sorted_("a dangerous unit missed leaves nothing", 0, {"t2": "mend"}, missed=["t2"], dangerous=["t2"]),
        sorted_("missing one that is not dangerous leaves some", 667, {"t1": "use"}, missed=["t1"]),
        marked(
            "one place for all: (4 - 2 * 4)/12, floored; the dangerous unit is named",
            SIX,
            dict.fromkeys(RIGHT, "use"),
            0,
            **(NOTHING | {"missed": ["m1", "m2", "t1", "t2"], "dangerous": ["t2"]}),
        ),
        marked(
            "all condemned: (4 - 4)/12",
            SIX,
            dict.fromkeys(RIGHT, "tag-out"),
            0,
            **(NOTHING | {"needless": ["u1", "u2", "m1", "m2"]}),
        ),
        marked(
            "all in the middle: (4 - 4 - 2)/12, floored",
            SIX | {"dangerous": []},
            dict.fromkeys(RIGHT, "mend"),
            0,
            **(NOTHING | {"missed": ["t1", "t2"], "needless": ["u1", "u2"]}),
        ),
        marked(
            "what is left out earns nothing and costs nothing: 6/12",
            SIX,
            {"u1": "use", "m1": "mend", "t2": "tag-out"},
            500,
            **(NOTHING | {"left": ["u2", "m2", "t1"]}),
        ),
        marked(
            "nothing sorted: 0/12", SIX, {}, 0, **(NOTHING | {"left": ["u1", "u2", "m1", "m2", "t1", "t2"]})
        ),
        marked(
            "of two places the strict one for all: (2 - 2)/4",
            TWO,
            {"u1": "tag-out", "t1": "tag-out"},
            0,
            **(NOTHING | {"needless": ["u1"]}),
        ),
        marked(
            "of two places the mild one for all: (2 - 2)/4",
            TWO,
            {"u1": "use", "t1": "use"},
            0,
            **(NOTHING | {"missed": ["t1"]}),
        ),
        sorted_("must-pass and all right", 1000, {}, WHOLE),
        sorted_("must-pass and one wrong: nothing", 0, {"u1": "mend"}, WHOLE, needless=["u1"]),
        marked(
            "must-pass and one left out: nothing",
            WHOLE,
            {unit: place for unit, place in RIGHT.items() if unit != "u1"},
            0,
            **(NOTHING | {"left": ["u1"]}),
        ),
        marked("no answer earns nothing", SIX, None, 0, problem="unanswered"),
        marked("an unknown unit is malformed", SIX, {"u9": "use"}, 0, problem="malformed"),
        marked("an unknown place is malformed", SIX, {"u1": "bin"}, 0, problem="malformed"),
        marked("a number for a place is malformed", SIX, {"u1": 0}, 0, problem="malformed"),
        marked("a list is malformed", SIX, ["u1"], 0, problem="malformed"),
        marked("a text is malformed", SIX, "use", 0, problem="malformed"),
    ]

"""Vectors of marking a way through a drill."""

from __future__ import annotations

from case import Case, hand, marked

DRILL = {
    "kind": "drill",
    "start": "jam",
    "moments": {
        "jam": {
            "stop": {"to": "stopped", "penalty": 0},
            "lift": {"to": "stopped", "penalty": 400},
            "hold": {"critical": True},
        },
        "stopped": {"isolate": {"to": "good", "penalty": 0}, "pry": {"to": "bent", "penalty": 700}},
    },
    "ends": {"good": 1000, "bent": 600},
    "deeds": ["stop", "lift", "hold", "isolate", "pry"],
}


def drilling() -> list[Case]:
    """Ways through a drill: what its end is worth, less the penalties on the way."""

    def way(
        name: str, deeds: list[str], mark: int, critical: str = "", end: str = "", penalty: int = 0
    ) -> Case:
        return marked(name, DRILL, deeds, mark, critical=critical, end=end, penalty=penalty)

    def wrong(name: str, answer: object, problem: str = "malformed") -> Case:
        return marked(name, DRILL, answer, 0, problem=problem)

    return [
        way("the right way earns everything", ["stop", "isolate"], 1000, end="good"),
        way("a penalty on the way: 1000 - 400", ["lift", "isolate"], 600, end="good", penalty=400),
        way(
            "more penalties than the end is worth: 600 - 1100, floored",
            ["lift", "pry"],
            0,
            end="bent",
            penalty=1100,
        ),
        way("a critical error ends it", ["hold"], 0, critical="hold"),
        wrong("a way that stops on its way earns nothing", ["stop"], "unfinished"),
        wrong("nothing done is no way", [], "unfinished"),
        wrong("no answer", None, "unanswered"),
        wrong("a deed of another moment is malformed", ["isolate"]),
        wrong("a deed after the end is malformed", ["stop", "isolate", "pry"]),
        wrong("a deed after a critical error is malformed", ["hold", "stop"]),
        wrong("a deed that is none is malformed", ["stop", "constructor"]),
        wrong("a number is no deed", ["stop", 1]),
        wrong("a text is no way", "stop"),
        wrong("a mapping is no way", {"0": "stop"}),
    ]


def drilled_checks() -> list[Case]:
    """A check with a drill: a critical error fails it, whatever the marks."""
    given = {
        "plan": {"form-algorithm": 1, "gates": [], "cells": [], "questions": {}},
        "percent": 50,
        "outcomes": {"way": "guard-set", "again": "guard-set"},
        "keys": {"way": DRILL, "again": DRILL},
        "form": [{"q": "way", "variant": 0, "options": []}, {"q": "again", "variant": 0, "options": []}],
    }

    def case(name: str, again: list[str] | None, mark: int, critical: list[str], passed: bool) -> Case:
        answers = {"way": ["stop", "isolate"]} | ({} if again is None else {"again": again})
        expect = {
            "marks": 1000 + mark,
            "of": 2000,
            "percent": 50,
            "cut": 1000,
            "passed": passed,
            "must-pass": [],
            "critical": critical,
            "outcomes": {"guard-set": {"marks": 1000 + mark, "of": 2000}},
            "questions": {"way": 1000, "again": mark},
        }
        return hand(name, "result", {**given, "answers": answers}, expect)

    return [
        case("a drill with a penalty passes by its marks", ["lift", "isolate"], 600, [], True),
        case("half the marks suffice without the other drill", None, 0, [], True),
        case("half the marks do not suffice with a critical error", ["hold"], 0, ["again"], False),
        case("an end that is worth nothing is no critical error", ["lift", "pry"], 0, [], True),
    ]

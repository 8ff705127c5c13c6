"""Times re-marking 100,000 attempts of 60 questions against ``json.loads`` of the same bytes, in the same process.

In turn (A B A B …), both on one processor. The yardstick only parses; ours reads every record strictly, draws its
form again from its seed, marks each answer and adds up. The attempts are of a course of 240 questions of six kinds,
each with a seed of its own and answers that are right, wrong and left out; none is seen twice within a run. Ours
begins with nothing remembered; what it comes to remember of answers and orders is part of what is measured.
"""

from __future__ import annotations

import argparse
import json
import random
import statistics
import time
from collections.abc import Callable
from typing import Any

from journeybook.marking import canonical
from journeybook.marking.attempt import FORMAT
from journeybook.marking.draw import draw_form
from journeybook.marking.remark import Marker

CELLS, QUESTIONS_A_CELL, DRAWN = 12, 20, 5


def question(number: int) -> tuple[dict[str, Any], dict[str, Any], list[Any]]:
    """Key, shape and a few answers of a question; the kinds as a usual check mixes them."""
    kind = ("choice", "choice", "choice", "choices", "choices", "order", "match", "number", "choice", "spot")[
        number % 10
    ]
    ids = [f"o{letter}" for letter in "abcdef"]
    shape = {"kind": kind, "options": ids, "shuffle": True, "variants": 1}
    if kind == "choice":
        return {"kind": kind, "options": ids[:4], "right": "ob"}, {**shape, "options": ids[:4]}, ids[:4]
    if kind == "spot":
        return {"kind": kind, "spots": ids, "right": "ob"}, shape, list(ids)
    if kind == "choices":
        answers = [["oa"], ["oa", "oc"], ["oa", "oc", "oe"], ["ob", "oc"], ids]
        return {"kind": kind, "options": ids, "right": ["oa", "oc", "oe"], "whole": False}, shape, answers
    if kind == "order":
        before = [[one, other] for at, one in enumerate(ids) for other in ids[at + 1 :]]
        drawn = random.Random(number)
        answers = [drawn.sample(ids, len(ids)) for _ in range(20)] + [ids] * 10
        return (
            {"kind": kind, "steps": ids, "before": before, "critical": [["oa", "of"]]},
            {**shape, "before": before},
            answers,
        )
    if kind == "match":
        pairs = dict(zip(("i1", "i2", "i3", "i4"), ids, strict=False))
        drawn = random.Random(number)
        answers = [dict(zip(pairs, drawn.sample(ids, 4), strict=True)) for _ in range(20)] + [pairs] * 10
        return {"kind": kind, "items": list(pairs), "answers": ids, "pairs": pairs}, shape, answers
    variants = [{"low": f"{base}", "high": f"{base + 10}"} for base in (165, 265, 365)]
    key = {
        "kind": kind,
        "unit": "L/min",
        "unit-needed": True,
        "units": {"L/min": "1", "m3/h": "50/3"},
        "variants": variants,
    }
    answers = [
        {"value": f"{value / 10:.1f}".replace(".", ","), "unit": unit}
        for value in range(1600, 2100, 5)
        for unit in ("L/min", "m3/h")
    ]
    return key, {"kind": kind, "options": [], "shuffle": False, "variants": 3}, answers


def course() -> tuple[bytes, dict[str, Any], dict[str, list[Any]]]:
    """compiled.json, its plan, and answers by question."""
    keys, shapes, answers, cells = {}, {}, {}, []
    for cell in range(CELLS):
        names = [f"topic-{cell}-question-{number}" for number in range(QUESTIONS_A_CELL)]
        cells.append({"outcome": f"outcome-{cell}", "level": "apply", "draw": DRAWN, "questions": names})
        for number, name in enumerate(names):
            keys[name], shapes[name], answers[name] = question(number)
    plan = {"form-algorithm": 1, "gates": [], "cells": cells, "questions": shapes}
    facts = {name: {"outcome": cell["outcome"]} for cell in cells for name in cell["questions"]}
    content: dict[str, Any] = {
        "format": "journeybook compiled course 1", "course": "synthetic", "version": "1.0", "profile": "any",
        "languages": ["en"], "public": {"plan": plan, "cut": {"percent": 80, "of": 60_000}, "questions": facts},
        "private": {"keys": keys},
    }  # fmt: skip
    return canonical.write(content), plan, answers


def attempts(
    count: int, digest: str, plan: dict[str, Any], answers: dict[str, list[Any]], first: int
) -> list[bytes]:
    """Canonical attempts with seeds from ``first`` on."""
    chance = random.Random(first)
    made = []
    for number in range(first, first + count):
        form = draw_form(plan, f"seed-{number}", ())
        given = {one["q"]: chance.choice(answers[one["q"]]) for one in form if chance.random() > 0.03}
        made.append(canonical.write({
            "format": FORMAT, "course": "synthetic", "version": "1.0", "digest": digest, "profile": "any",
            "language": "en",
            "seed": f"seed-{number}", "avoid": [], "form": form, "answers": given, "shown": [one["q"] for one in form],
            "started": "2026-11-24T09:00:00Z", "ended": "2026-11-24T09:40:00Z",
            "card": {"id": f"c-{number}", "name": f"Person {number}", "workplace": "Quillon Basin Works"},
        }))  # fmt: skip
    return made


def timed(work: Callable[[], object]) -> float:
    """Seconds of one run."""
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun


def main() -> None:
    """Measure in batches, so that 100,000 attempts need not stand in memory at once."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--attempts", type=int, default=100_000)
    parser.add_argument("--batch", type=int, default=5_000)
    arguments = parser.parse_args()
    compiled, plan, answers = course()
    marker = Marker(compiled)
    ours, bare, size, made = [], [], 0, 0

    def mark_all(records: list[bytes]) -> None:
        for record in records:
            assert marker.result(record) is not None

    def parse_all(records: list[bytes]) -> None:
        for record in records:
            json.loads(record)

    while made < arguments.attempts:
        count = min(arguments.batch, arguments.attempts - made)
        records = attempts(count, marker.digest, plan, answers, made)
        ours.append(timed(lambda records=records: mark_all(records)))  # type: ignore[misc]
        bare.append(timed(lambda records=records: parse_all(records)))  # type: ignore[misc]
        made += count
        size += sum(map(len, records))
    ratio = statistics.median(one / other for one, other in zip(ours, bare, strict=True))
    print(
        f"re-marking {made} attempts of {CELLS * DRAWN} questions, {size / made / 1000:.1f} kB each, one processor"
    )
    print(f"ours {sum(ours):.2f} s, bare json.loads {sum(bare):.2f} s, ratio {ratio:.2f} (goal 3)")


if __name__ == "__main__":
    main()

"""Which questions a form holds and in which order everything stands: ``form-algorithm: 1``.

Each critical fact gives exactly one question, so that no form is harder to pass than another by its gates;
then each cell of the blueprint gives its number. Nothing but the plan, the seed and the questions to
avoid enters, so anybody can draw the form again and compare.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any

from journeybook.content.model import Course, Question, Use
from journeybook.marking.kind import Json, Key
from journeybook.marking.kinds import KINDS
from journeybook.marking.precedence import broken_pairs
from journeybook.marking.stream import rank, stream

ALGORITHM = 1


def shape(key: Key, keep_order: bool) -> dict[str, Json]:
    """Return what drawing must know: ``{"kind", "options", "shuffle", "variants"}``, perhaps ``before``.

    ``options`` are the ids that are put into an order: options, steps, or the answers of a match.
    ``variants`` is 1 where there is only one.
    """
    arranged = KINDS[key["kind"]].arranged
    found: dict[str, Json] = {
        "kind": key["kind"],
        "options": list(key[arranged]) if arranged else [],
        "shuffle": bool(arranged) and not keep_order,
        "variants": len(key.get("variants", ())) or 1,
    }
    if "before" in key:
        found["before"] = [list(pair) for pair in key["before"]]
    return found


def keeps_order(question: Question) -> bool:
    """Return whether the author wants the options to stay as written."""
    return bool(getattr(question, "keep_order", False))


def plan(course: Course, keys: Mapping[str, Key]) -> dict[str, Json] | None:
    """Return the plan of the course's check, or None where it has none.

    ``keys`` are the keys of its questions; DEVELOPERS.md gives the plan's shape.
    """
    if course.check is None:
        return None
    asked = [question for question in course.questions.values() if question.use is Use.CHECK]
    gates: list[Json] = []
    used: list[Question] = []
    for fact in course.critical_facts:
        fitting = [question for question in asked if question.critical == fact.id]
        used += fitting
        gates.append({"fact": fact.id, "questions": [question.id for question in fitting]})
    cells: list[Json] = []
    for cell in course.check.cells:
        fitting = [
            question
            for question in asked
            if question.critical == "" and (question.outcome, question.level) == (cell.outcome, cell.level)
        ]
        used += fitting
        cells.append(
            {
                "outcome": cell.outcome,
                "level": cell.level.value,
                "draw": cell.draw,
                "questions": [question.id for question in fitting],
            }
        )
    return {
        "form-algorithm": ALGORITHM,
        "gates": gates,
        "cells": cells,
        "questions": {question.id: shape(keys[question.id], keeps_order(question)) for question in used},
    }


def questions_in_a_form(plan: Mapping[str, Any]) -> int:
    """Return how many questions each form has."""
    draws: list[int] = [cell["draw"] for cell in plan["cells"]]
    return len(plan["gates"]) + sum(draws)


def draw_form(plan: Mapping[str, Any], seed: str, avoid: Collection[str]) -> list[dict[str, Any]]:
    """Return the form for a seed: ``[{"q": id, "variant": 0, "options": [ids]}]``, in the order of asking.

    Questions in ``avoid`` are taken only where the others do not suffice.
    """
    drawn: list[str] = []
    for gate in plan["gates"]:
        drawn += _taken(gate["questions"], 1, seed, avoid)
    for cell in plan["cells"]:
        drawn += _taken(cell["questions"], cell["draw"], seed, avoid)
    drawn.sort(key=lambda question_id: (stream(seed, question_id, "position").next(), question_id))
    shapes: Mapping[str, Mapping[str, Any]] = plan["questions"]
    return [
        {
            "q": question_id,
            "variant": _variant(shapes[question_id]["variants"], seed, question_id),
            "options": arranged(shapes[question_id], seed, question_id),
        }
        for question_id in drawn
    ]


def _taken(questions: Sequence[str], count: int, seed: str, avoid: Collection[str]) -> list[str]:
    if count >= len(questions):
        return list(questions)  # the form is sorted by position anyway
    ranked = sorted(questions, key=lambda question_id: rank(seed, question_id))
    fresh = [question_id for question_id in ranked if question_id not in avoid]
    seen = [question_id for question_id in ranked if question_id in avoid]
    return (fresh + seen)[:count]


def _variant(variants: int, seed: str, question_id: str) -> int:
    # A draw below 1 is 0; most questions have one variant, and nothing else reads this stream.
    return 0 if variants == 1 else stream(seed, question_id, "variant").below(variants)


def arranged(shape: Mapping[str, Any], seed: str, question_id: str) -> list[str]:
    """Return the options in the order in which they are shown first.

    Steps to put in order never start in a right order: they are shuffled again, in the same stream, until a
    rule is broken. At least every second order breaks a given rule, so this ends soon.
    """
    options: list[str] = list(shape["options"])
    if not shape["shuffle"]:
        return options
    source = stream(seed, question_id, "options")
    before: Sequence[Sequence[str]] = shape.get("before", ())
    order = source.shuffled(options)
    while before and not broken_pairs(before, order):
        order = source.shuffled(options)
    return order

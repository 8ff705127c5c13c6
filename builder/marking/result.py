"""What a whole check comes to.

The cut is compared as integers, marks * 100 >= percent * of, because a float makes 7 % of 100 into 8 when
rounded up. Must-pass questions stand beside the total: missing one fails the check, whatever the total; and so does
a critical error in a drill.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from journeybook.marking.kind import WEIGHT, Json, Key, Marked
from journeybook.marking.mark import mark


def check_result(
    *,
    plan: Mapping[str, Any],
    percent: int,
    outcomes: Mapping[str, str],
    keys: Mapping[str, Key],
    form: Sequence[Mapping[str, Any]],
    answers: Mapping[str, Any],
) -> dict[str, Json]:
    """Return the result of one form.

    ``outcomes`` maps question ids to outcome ids. The shape: ``{"marks", "of", "percent", "cut", "passed",
    "must-pass": [{"fact", "question", "mark"}], "critical": [question ids], "outcomes": {id: {"marks", "of"}},
    "questions": {id: mark}}``, where ``cut`` is the least number of marks that passes, and ``critical`` are the
    drills that a critical error ended.
    """
    marked = {asked["q"]: mark(keys[asked["q"]], asked["variant"], answers.get(asked["q"])) for asked in form}
    return add_up(plan=plan, percent=percent, outcomes=outcomes, marked=marked)


def add_up(
    *, plan: Mapping[str, Any], percent: int, outcomes: Mapping[str, str], marked: Mapping[str, Marked]
) -> dict[str, Json]:
    """Return the result where each question of the form has been marked; shaped as ``check_result`` says."""
    return with_marks(
        plan=plan,
        percent=percent,
        outcomes=outcomes,
        marks={question: each.mark for question, each in marked.items()},
        critical=[question for question, each in marked.items() if ended_critically(each)],
    )


def with_marks(
    *,
    plan: Mapping[str, Any],
    percent: int,
    outcomes: Mapping[str, str],
    marks: dict[str, int],
    critical: Sequence[str],
) -> dict[str, Json]:
    """Return the result from the marks of each question, and the drills that a critical error ended."""
    by_outcome: dict[str, dict[str, int]] = {}
    for question, earned in marks.items():
        outcome = outcomes[question]
        share = by_outcome.get(outcome)
        if share is None:
            share = by_outcome[outcome] = {"marks": 0, "of": 0}
        share["marks"] += earned
        share["of"] += WEIGHT
    must_pass: list[dict[str, Any]] = [
        {"fact": gate["fact"], "question": question, "mark": marks[question]}
        for gate in plan["gates"]
        for question in gate["questions"]
        if question in marks
    ]
    total = sum(marks.values())
    of = WEIGHT * len(marks)
    gates_right = all(gate["mark"] == WEIGHT for gate in must_pass)
    passed = total * 100 >= percent * of and gates_right and not critical
    return {
        "marks": total,
        "of": of,
        "percent": percent,
        "cut": least_passing(percent, of),
        "passed": passed,
        "must-pass": list(must_pass),
        "critical": [*critical],
        "outcomes": {outcome: dict(share) for outcome, share in by_outcome.items()},
        "questions": dict(marks),
    }


def ended_critically(marked: Marked) -> bool:
    """Return whether a critical error ended the drill; an order's critical pairs cost only its own marks."""
    return marked.remarks["kind"] == "drill" and bool(marked.remarks.get("critical"))


def least_passing(percent: int, of: int) -> int:
    """Return the least marks that are ``percent`` of ``of``, rounded up."""
    return -(-percent * of // 100)

"""Marking a record again from its raw answers, as anybody who holds the compiled course can.

The rules, all of which a record must keep:

1. its bytes are canonical JSON, and it is an attempt of a format that this program knows;
2. the compiled course is the one whose digest, id, version and profile it names;
3. its form is what its seed and its list of questions to avoid give;
4. every answer belongs to a question of the form, and fits it;
5. it ended no earlier than it began.

A record that breaks one is not marked at all: what is wrong is said instead.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.marking import attempt as records
from journeybook.marking import canonical
from journeybook.marking.attempt import Attempt
from journeybook.marking.compiled import FORMAT as COMPILED_FORMAT
from journeybook.marking.draw import draw_form
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.kind import Json
from journeybook.marking.mark import mark
from journeybook.marking.result import check_result

_REFUSALS = {
    "size": ("M002", "Ask for the file that the check itself saved."),
    "depth": ("M002", "Ask for the file that the check itself saved."),
    "utf-8": ("M001", "Choose the file that the check saved; another program has perhaps rewritten it."),
    "json": ("M001", "Choose the file that the check saved; it was perhaps cut short on its way."),
    "duplicate": ("M003", "Ask for the file as the check saved it; no page of ours writes this."),
    "number": ("M003", "Ask for the file as the check saved it; no page of ours writes this."),
    "surrogate": ("M003", "Ask for the file as the check saved it; no page of ours writes this."),
    "form": ("M004", "Ask for the file as the check saved it; even a space or a line end added later shows."),
}
_SHAPE_MEND = "Ask for the file as the check saved it."


@dataclass(frozen=True, kw_only=True)
class Remarked:
    """What marking a record again gave."""

    fingerprint: str
    """Of the very bytes that were read."""
    attempt: Attempt | None
    """None where the record could not be read."""
    result: Mapping[str, Any] | None
    """The check's result (``result.check_result``); None while there are problems."""
    remarks: Mapping[str, Mapping[str, Json]]
    """Question id -> remarks; empty while there are problems."""
    problems: tuple[Problem, ...]


def re_mark(attempt_bytes: bytes, compiled_bytes: bytes, name: str = "attempt") -> Remarked:
    """Return the result of a record, or what is wrong with it; the problems call its file ``name``."""
    place = Place(file=name)
    print_of_it = fingerprint(attempt_bytes)
    compiled = _compiled(compiled_bytes)
    problems: list[Problem] = []
    attempt: Attempt | None = None
    try:
        attempt = records.read(attempt_bytes)
    except canonical.NotCanonical as refused:
        code, mend = _REFUSALS[refused.reason]
        problems.append(fault(code, place, refused.detail, mend))
    except records.NotAnAttempt as refused:
        problems.append(fault(refused.code, place, refused.message, _SHAPE_MEND))
    if attempt is not None and compiled is None:
        problems.append(
            fault(
                "M012",
                place,
                "The contents to mark by are not a compiled course with a check, of a format known here.",
                "Use the compiled.json of the release that the record names.",
            )
        )
    elif attempt is not None and compiled is not None:
        problems += _mismatches(attempt, compiled, hashlib.sha256(compiled_bytes).hexdigest(), place)
        if not problems:
            problems += _misfits(attempt, compiled, place)
    if problems or attempt is None or compiled is None:
        return Remarked(
            fingerprint=print_of_it, attempt=attempt, result=None, remarks={}, problems=tuple(problems)
        )
    form = records.to_json(attempt)["form"]
    assert isinstance(form, list)
    keys = compiled["private"]["keys"]
    questions = compiled["public"]["questions"]
    return Remarked(
        fingerprint=print_of_it,
        attempt=attempt,
        result=check_result(
            plan=compiled["public"]["plan"],
            percent=compiled["public"]["cut"]["percent"],
            outcomes={question: facts["outcome"] for question, facts in questions.items()},
            keys=keys,
            form=[asked for asked in form if isinstance(asked, dict)],
            answers=attempt.answers,
        ),
        remarks={
            asked.question: mark(
                keys[asked.question], asked.variant, attempt.answers.get(asked.question)
            ).remarks
            for asked in attempt.form
        },
        problems=(),
    )


def _compiled(data: bytes) -> dict[str, Any] | None:
    try:
        found = canonical.read(data, canonical.COMPILED_SIZE_CAP)
    except canonical.NotCanonical:
        return None
    if not isinstance(found, dict) or found.get("format") != COMPILED_FORMAT:
        return None
    compiled: dict[str, Any] = found
    return compiled if compiled["public"]["plan"] is not None else None


def _mismatches(
    attempt: Attempt, compiled: Mapping[str, Any], digest: str, place: Place
) -> Iterator[Problem]:
    """Yield where the record names another course than the compiled one."""
    for member, recorded in (
        ("course", attempt.course),
        ("version", attempt.version),
        ("profile", attempt.profile),
    ):
        if recorded != compiled[member]:
            yield fault(
                "M007",
                place,
                f"The record is of {member} “{recorded}”, this course of “{compiled[member]}”.",
                "Use the compiled.json of the release that the record names.",
            )
    if attempt.language not in compiled["languages"]:
        yield fault(
            "M007",
            place,
            f"The record is in language “{attempt.language}”, which the compiled course does not have.",
            "Use the compiled.json of the release that the record names.",
        )
    if attempt.digest != digest:
        yield fault(
            "M008",
            place,
            f"The record was made with contents {attempt.digest[:16]}…, this course is {digest[:16]}….",
            "Use the compiled.json with that digest; a record is only ever marked by its own contents.",
        )


def _misfits(attempt: Attempt, compiled: Mapping[str, Any], place: Place) -> Iterator[Problem]:
    """Yield where the record contradicts itself."""
    form = records.to_json(attempt)["form"]
    if form != draw_form(compiled["public"]["plan"], attempt.seed, attempt.avoid):
        yield fault(
            "M009",
            place,
            "The questions, their order or the order of their options are not what the record's seed gives.",
            "Ask how the record came about, and let the person sit the check again.",
        )
        return
    variants = {asked.question: asked.variant for asked in attempt.form}
    for question, answer in attempt.answers.items():
        if question not in variants:
            yield fault(
                "M010",
                place,
                f"There is an answer to “{question}”, which the form does not ask.",
                "Ask how the record came about, and let the person sit the check again.",
            )
            continue
        marked = mark(compiled["private"]["keys"][question], variants[question], answer)
        if marked.remarks.get("problem") == "malformed":
            yield fault(
                "M010",
                place,
                f"The answer to “{question}” is not one that the question can have.",
                "Ask how the record came about, and let the person sit the check again.",
            )
    unasked = [question for question in attempt.shown if question not in variants]
    if unasked:
        yield fault(
            "M006",
            place,
            f"The member “shown” names “{unasked[0]}”, which the form does not ask.",
            _SHAPE_MEND,
        )
    if attempt.ended < attempt.started:
        yield fault(
            "M011",
            place,
            f"The record ended at {attempt.ended}, before it began at {attempt.started}.",
            "Set the clock of the device, and let the person sit the check again if the date matters.",
        )

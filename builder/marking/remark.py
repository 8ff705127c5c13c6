"""Marking a record again from its raw answers, as anybody who holds the compiled course can.

The rules, all of which a record must keep:

1. its bytes are canonical JSON, and it is an attempt of a format that this program knows;
2. the compiled course is the one whose digest, id, version and profile it names;
3. its form is what its seed and its list of questions to avoid give;
4. every answer belongs to a question of the form, and fits it.

A record that breaks one is not marked at all: what is wrong is said instead. A record that ended before it began
is marked all the same, with a warning: a clock set back says nothing about the answers.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import islice
from typing import Any

from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Place, Problem
from journeybook.marking import attempt as records
from journeybook.marking import canonical
from journeybook.marking.attempt import Attempt, form_to_json
from journeybook.marking.compiled import FORMAT as COMPILED_FORMAT
from journeybook.marking.draw import ALGORITHM, draw_form
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.kind import Json, Marked
from journeybook.marking.mark import mark
from journeybook.marking.quick_remark import QuickMarker
from journeybook.marking.result import add_up

_REFUSALS = {
    "size": ("M002", "Ask for the file that the check itself saved."),
    "depth": ("M002", "Ask for the file that the check itself saved."),
    "utf-8": ("M001", "Choose the file that the check saved; another program has perhaps rewritten it."),
    "json": (
        "M001",
        "Choose the file that the check saved: it begins with `{`. Where this one does, it was cut short or changed on "
        "its way; ask for it again.",
    ),
    "duplicate": ("M003", "Ask for the file as the check saved it; no page of ours writes this."),
    "number": ("M003", "Ask for the file as the check saved it; no page of ours writes this."),
    "surrogate": ("M003", "Ask for the file as the check saved it; no page of ours writes this."),
    "form": ("M004", "Ask for the file as the check saved it; even a space or a line end added later shows."),
}
_MOST_NAMED = 20
_LONGEST_NAMED = 80
"""A file that somebody made up may name a hundred thousand questions; nobody reads them all."""
_SHAPE_MEND = "Ask for the file as the check saved it."
_SIT_AGAIN = "Ask how the record came about, and let the person sit the check again."


def _said(code: str, detail: str) -> str:
    """What is wrong, and for a file of another kind also what it was read as."""
    if code != "M001":
        return detail
    return f"This was read as the record of a check, which is JSON, and it is none: {detail[0].lower()}{detail[1:]}"


@dataclass(frozen=True, kw_only=True)
class Remarked:
    """What marking a record again gave."""

    fingerprint: str
    """Of the very bytes that were read."""
    attempt: Attempt | None
    """None where the record could not be read."""
    result: Mapping[str, Any] | None
    """The check's result (``result.check_result``); None while there is a fault."""
    remarks: Mapping[str, Mapping[str, Json]]
    """Question id -> remarks; empty while there is a fault."""
    problems: tuple[Problem, ...]
    """Faults, which keep the record from being marked, or else warnings, which go with its result."""


def re_mark(attempt_bytes: bytes, compiled_bytes: bytes, name: str = "attempt") -> Remarked:
    """Return the result of a record, or what is wrong with it; the problems call its file ``name``."""
    return Marker(compiled_bytes).re_mark(attempt_bytes, name)


class Marker:
    """A compiled course that is read once and marks any number of records."""

    def __init__(self, compiled_bytes: bytes) -> None:
        """Take the contents of compiled.json; what is wrong with them is said of each record."""
        self._compiled = _compiled(compiled_bytes)
        self.digest = hashlib.sha256(compiled_bytes).hexdigest()
        self._outcomes: dict[str, str] = {}
        if self._compiled is not None:
            questions = self._compiled["public"]["questions"]
            self._outcomes = {question: facts["outcome"] for question, facts in questions.items()}

    @cached_property
    def _quick(self) -> QuickMarker | None:
        return None if self._compiled is None else QuickMarker(self._compiled, self.digest, self._outcomes)

    def result(self, attempt_bytes: bytes) -> Mapping[str, Any] | None:
        """Return the result of a record alone, for very many of them; None where it cannot be marked.

        ``re_mark`` says why not, and warns; where there is a result, both give the same.
        """
        quick = None if self._quick is None else self._quick.result(attempt_bytes)
        return self.re_mark(attempt_bytes).result if quick is None else quick

    def re_mark(self, attempt_bytes: bytes, name: str = "attempt") -> Remarked:
        """Return the result of a record, or what is wrong with it; the problems call its file ``name``."""
        place = Place(file=name, length=0)
        attempt: Attempt | None = None
        marked: dict[str, Marked] = {}
        result: Mapping[str, Any] | None = None
        try:
            attempt = records.read(attempt_bytes)
        except canonical.NotCanonical as refused:
            code, mend = _REFUSALS[refused.reason]
            problems = [fault(code, place, _said(code, refused.detail), mend)]
        except records.NotAnAttempt as refused:
            problems = [fault(refused.code, place, refused.message, _SHAPE_MEND)]
        else:
            problems = list(self._mismatches(attempt, place))
            if self._compiled is not None and not problems:
                problems = list(_misfits(attempt, self._compiled["public"]["plan"], place))
            if self._compiled is not None and not problems:
                marked = _marked(attempt, self._compiled["private"]["keys"])
                problems = list(_odd_answers(attempt, marked, place))
            if self._compiled is not None and not problems:
                result = add_up(
                    plan=self._compiled["public"]["plan"],
                    percent=self._compiled["public"]["cut"]["percent"],
                    outcomes=self._outcomes,
                    marked=marked,
                )
                problems = list(_doubts(attempt, place))
        return Remarked(
            fingerprint=fingerprint(attempt_bytes),
            attempt=attempt,
            result=result,
            remarks={} if result is None else {question: each.remarks for question, each in marked.items()},
            problems=tuple(problems),
        )

    def _mismatches(self, attempt: Attempt, place: Place) -> Iterator[Problem]:
        """Yield where the record names another course than the compiled one."""
        mend = "Use the compiled.json of the release that the record names."
        if self._compiled is None:
            message = (
                "The contents to mark by are not a compiled course with a check, of a format known here."
            )
            yield fault("M012", place, message, mend)
            return
        for member, recorded in (
            ("course", attempt.course),
            ("version", attempt.version),
            ("profile", attempt.profile),
        ):
            here = self._compiled[member]
            if recorded != here:
                message = f"The record is of {member} “{recorded}”, this course of “{here}”."
                yield fault("M007", place, message, mend)
        if attempt.language not in self._compiled["languages"]:
            message = (
                f"The record is in language “{attempt.language}”, which the compiled course does not have."
            )
            yield fault("M007", place, message, mend)
        if attempt.digest != self.digest:
            yield fault(
                "M008",
                place,
                f"The record was made with contents {attempt.digest[:16]}…, "
                f"this course is {self.digest[:16]}….",
                "Use the compiled.json with that digest; a record is only ever marked by its own contents.",
            )


def _compiled(data: bytes) -> dict[str, Any] | None:
    try:
        found = canonical.read(data, canonical.COMPILED_SIZE_CAP)
    except canonical.NotCanonical:
        return None
    if not isinstance(found, dict) or found.get("format") != COMPILED_FORMAT:
        return None
    compiled: dict[str, Any] = found
    return compiled if _has_check(compiled) else None


def _has_check(compiled: Mapping[str, Any]) -> bool:
    """Return whether everything is there that marking reads."""
    try:
        public, private = compiled["public"], compiled["private"]
        return (
            public["plan"]["form-algorithm"] == ALGORITHM
            and isinstance(public["cut"]["percent"], int)
            and public["questions"].keys() == private["keys"].keys()
            and all(compiled[member] for member in ("course", "version", "profile", "languages"))
        )
    except (AttributeError, KeyError, TypeError):
        return False


def _misfits(attempt: Attempt, plan: Mapping[str, Any], place: Place) -> Iterator[Problem]:
    """Yield where the record contradicts itself."""
    if form_to_json(attempt.form) != draw_form(plan, attempt.seed, attempt.avoid):
        yield fault(
            "M009",
            place,
            "The questions, their order or the order of their options are not what the record's seed gives.",
            _SIT_AGAIN,
        )
        return
    asked = {each.question for each in attempt.form}
    for question in islice((each for each in attempt.answers if each not in asked), _MOST_NAMED):
        message = f"There is an answer to “{question[:_LONGEST_NAMED]}”, which the form does not ask."
        yield fault("M010", place, message, _SIT_AGAIN)
    for question in islice((each for each in attempt.shown if each not in asked), _MOST_NAMED):
        message = f"The member “shown” names “{question[:_LONGEST_NAMED]}”, which the form does not ask."
        yield fault("M006", place, message, _SHAPE_MEND)


def _marked(attempt: Attempt, keys: Mapping[str, Any]) -> dict[str, Marked]:
    return {
        asked.question: mark(keys[asked.question], asked.variant, attempt.answers.get(asked.question))
        for asked in attempt.form
    }


def _odd_answers(attempt: Attempt, marked: Mapping[str, Marked], place: Place) -> Iterator[Problem]:
    """Yield the answers that no page of ours could have written."""
    for question in attempt.answers:
        if marked[question].remarks.get("problem") == "malformed":
            message = f"The answer to “{question}” is not one that the question can have."
            yield fault("M010", place, message, _SIT_AGAIN)


def _doubts(attempt: Attempt, place: Place) -> Iterator[Problem]:
    """Yield what a reader of the result should know."""
    if attempt.ended < attempt.started:
        yield warning(
            "M011",
            place,
            f"The record ended at {attempt.ended}, before it began at {attempt.started}.",
            "Set the clock of the device, and note the day by hand if it matters; the marks stand.",
        )

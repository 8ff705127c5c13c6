"""What a kind of question must offer to be marked and drawn, and the few shapes that all kinds share."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, TypeAlias

from journeybook.content.model import Course, Question

Json: TypeAlias = "bool | int | str | list[Json] | dict[str, Json] | None"
"""Plain data as evidence holds it: no floats."""

Key: TypeAlias = Mapping[str, Any]
"""A marking key; DEVELOPERS.md, "Marking keys, answers, forms", gives the shape for each kind."""

WEIGHT = 1000
"""Every question weighs the same; a mark is an integer from 0 to this."""


@dataclass(frozen=True, slots=True)
class Marked:
    """What marking says about one answer."""

    mark: int
    """0 to 1000."""
    remarks: dict[str, Json]
    """Facts for the feedback, never sentences."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Kind:
    """Everything that differs from one kind of question to the next."""

    name: str
    """The YAML word."""
    lower: Callable[[Any, Course], dict[str, Json]]
    """(question, course) -> key. The question is of the kind's own class."""
    mark: Callable[[Key, int, Any], Marked]
    """(key, variant, raw answer) -> mark and remarks. Never raises, whatever the answer is."""
    arranged: str = ""
    """Which list of the key is put into an order for each form; empty where nothing is."""


def thousandths(numerator: int, denominator: int) -> int:
    """Return ``numerator/denominator`` of a question's weight, halves rounded up, as an integer.

    Only integers are used, so that no two machines and no two languages round differently.
    """
    return (2 * WEIGHT * numerator + denominator) // (2 * denominator)


def in_questions(marks: int) -> str:
    """Return thousandths as people count them, in whole questions: 33000 reads 33, and 21500 reads 21.5."""
    whole, rest = divmod(marks, WEIGHT)
    return f"{whole}.{rest:03}".rstrip("0").rstrip(".")


def malformed(kind: str) -> Marked:
    """Return the mark of an answer that no page of ours could have written."""
    return Marked(0, {"kind": kind, "problem": "malformed"})


def unanswered(kind: str) -> Marked:
    """Return the mark of a question that was left out."""
    return Marked(0, {"kind": kind, "problem": "unanswered"})


def distinct_texts(answer: object, allowed: Iterable[str]) -> list[str] | None:
    """Return ``answer`` if it is a list of different texts, all of them ``allowed``; otherwise None."""
    if not isinstance(answer, list):
        return None
    if not all(isinstance(each, str) for each in answer):
        return None
    chosen = set(answer)
    if len(chosen) != len(answer) or not chosen.issubset(allowed):
        return None
    return answer


def is_must_pass(question: Question) -> bool:
    """Return whether the question asks a critical fact, so that only a whole answer counts."""
    return question.critical != ""

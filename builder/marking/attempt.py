"""One person's raw answers at one check, as a record: format 1.

A record is accepted only when every member has its shape and its bytes are canonical. Whether the form
follows from the seed, and whether the answers fit the questions, needs the compiled course; ``remark`` checks
that.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, TypeGuard

from journeybook.marking import canonical
from journeybook.marking.kind import Json

FORMAT = "journeybook attempt 1"
LONGEST_TEXT = 1000
"""Characters in any text of the record that is not an answer."""
_MEMBERS = (
    "answers", "avoid", "card", "course", "digest", "ended", "form", "format", "language", "profile", "seed",
    "shown", "started", "version",
)  # fmt: skip
_DIGEST = re.compile(r"[0-9a-f]{64}")
_STAMP = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z")


class NotAnAttempt(ValueError):  # noqa: N818 - it says what the data are not
    """Canonical JSON that is no attempt of a known format."""

    def __init__(self, code: str, message: str) -> None:
        """Keep the code of the problem and the sentence for people."""
        self.code = code
        self.message = message
        super().__init__(message)


@dataclass(frozen=True, kw_only=True)
class Asked:
    """One question of the form."""

    question: str
    variant: int
    options: tuple[str, ...]
    """In the order in which they were shown first."""


@dataclass(frozen=True, kw_only=True)
class Card:
    """Whose attempt it is, as the person entered it."""

    id: str
    name: str
    workplace: str


@dataclass(frozen=True, kw_only=True)
class Attempt:
    """What was asked and what was answered."""

    course: str
    version: str
    digest: str
    """SHA-256 of the compiled course, in hex."""
    profile: str
    language: str
    seed: str
    avoid: tuple[str, ...]
    """Questions that the form tried not to repeat."""
    form: tuple[Asked, ...]
    answers: Mapping[str, Json]
    """Question id -> raw answer. A question left out or null was not answered."""
    shown: tuple[str, ...]
    """Questions that came on the screen, in that order."""
    started: str
    """RFC 3339, UTC, whole seconds, by the clock of the device."""
    ended: str
    card: Card


def to_json(attempt: Attempt) -> dict[str, Json]:
    """Return the attempt as plain data."""
    return {
        "format": FORMAT,
        "course": attempt.course,
        "version": attempt.version,
        "digest": attempt.digest,
        "profile": attempt.profile,
        "language": attempt.language,
        "seed": attempt.seed,
        "avoid": list(attempt.avoid),
        "form": [*form_to_json(attempt.form)],
        "answers": dict(attempt.answers),
        "shown": list(attempt.shown),
        "started": attempt.started,
        "ended": attempt.ended,
        "card": {"id": attempt.card.id, "name": attempt.card.name, "workplace": attempt.card.workplace},
    }


def form_to_json(form: Iterable[Asked]) -> list[dict[str, Any]]:
    """Return a form as plain data, as ``draw.draw_form`` gives it."""
    return [{"q": asked.question, "variant": asked.variant, "options": list(asked.options)} for asked in form]


def write(attempt: Attempt) -> bytes:
    """Return the bytes of the attempt's file."""
    return canonical.write(to_json(attempt))


def read(data: bytes) -> Attempt:
    """Return the attempt in a file's bytes.

    Raises ``canonical.NotCanonical`` where the bytes are not canonical, and NotAnAttempt for anything else.
    """
    found = canonical.read(data)
    if not isinstance(found, dict) or found.get("format") != FORMAT:
        raise NotAnAttempt("M005", f"The file does not say that it is a “{FORMAT}”.")
    if sorted(found) != list(_MEMBERS):
        odd = [member[:40] for member in sorted(set(found) ^ set(_MEMBERS))[: len(_MEMBERS)]]
        raise NotAnAttempt("M006", f"These members are missing, or should not be there: {', '.join(odd)}.")
    record: dict[str, Any] = found
    for member in ("course", "version", "profile", "language", "seed"):
        _need(is_text(record[member]) and record[member] != "", member, "a short text that is not empty")
    digest = record["digest"]
    _need(isinstance(digest, str) and bool(_DIGEST.fullmatch(digest)), "digest", "64 hexadecimal digits")
    for member in ("avoid", "shown"):
        _need(is_texts(record[member]), member, "a list of different ids")
    _need(isinstance(record["answers"], dict), "answers", "a mapping of question ids to answers")
    card = record["card"]
    _need(
        isinstance(card, dict)
        and sorted(card) == ["id", "name", "workplace"]
        and all(map(is_text, card.values())),
        "card",
        "id, name and workplace, each a short text",
    )
    return Attempt(
        course=record["course"],
        version=record["version"],
        digest=digest,
        profile=record["profile"],
        language=record["language"],
        seed=record["seed"],
        avoid=tuple(record["avoid"]),
        form=_form(record["form"]),
        answers=record["answers"],
        shown=tuple(record["shown"]),
        started=_stamp(record["started"], "started"),
        ended=_stamp(record["ended"], "ended"),
        card=Card(id=card["id"], name=card["name"], workplace=card["workplace"]),
    )


def is_text(value: object) -> bool:
    """Return whether ``value`` is a text of a length that a page of ours writes."""
    return isinstance(value, str) and len(value) <= LONGEST_TEXT


def is_texts(value: object) -> TypeGuard[list[str]]:
    """Return whether ``value`` is a list of different short texts."""
    return isinstance(value, list) and all(map(is_text, value)) and len(set(value)) == len(value)


def _form(value: object) -> tuple[Asked, ...]:
    shape = "a list of questions, each with q, variant and options"
    _need(isinstance(value, list), "form", shape)
    assert isinstance(value, list)
    asked: list[Asked] = []
    for each in value:
        _need(isinstance(each, dict) and sorted(each) == ["options", "q", "variant"], "form", shape)
        variant = each["variant"]
        _need(is_text(each["q"]) and is_texts(each["options"]), "form", shape)
        _need(isinstance(variant, int) and not isinstance(variant, bool), "form", shape)
        asked.append(Asked(question=each["q"], variant=variant, options=tuple(each["options"])))
    return tuple(asked)


def _stamp(value: object, member: str) -> str:
    shape = "a time such as 2026-11-24T09:00:00Z"
    _need(isinstance(value, str) and bool(_STAMP.fullmatch(value)), member, shape)
    assert isinstance(value, str)
    try:
        datetime.fromisoformat(value)
    except ValueError:
        _need(False, member, shape)
    return value


def _need(holds: bool, member: str, shape: str) -> None:
    if not holds:
        raise NotAnAttempt("M006", f"The member “{member}” is not {shape}.")

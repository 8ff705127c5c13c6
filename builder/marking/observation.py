"""What an assessor saw at one practical, as a record: format 1.

A record is accepted only when every member has its shape and its bytes are canonical. Whether it fits the course
it names, and whether its result can stand, is for ``observed`` to say.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from journeybook.marking import canonical
from journeybook.marking.attempt import Card, is_text
from journeybook.marking.kind import Json

FORMAT = "journeybook observation 1"
SEEN = ("yes", "no", "not-seen")
"""What an assessor may say of a step, the best first."""
RESULTS = ("competent", "not-yet-competent")
_MEMBERS = (
    "assessor", "course", "digest", "ended", "format", "held-on", "language", "location", "note", "person",
    "practical", "profile", "result", "safety", "second", "started", "steps", "stopped", "unit", "version",
)  # fmt: skip
_DIGEST = re.compile(r"[0-9a-f]{64}")
_STAMP = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z")
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


class NotAnObservation(ValueError):  # noqa: N818 - it says what the data are not
    """Canonical JSON that is no observation of a known format."""

    def __init__(self, code: str, message: str) -> None:
        """Keep the code of the problem and the sentence for people."""
        self.code = code
        self.message = message
        super().__init__(message)


@dataclass(frozen=True, kw_only=True)
class Assessor:
    """Who watched, and by what right."""

    name: str
    role: str
    basis: str
    """What makes this person fit to judge it: training, experience, who named them."""


@dataclass(frozen=True, kw_only=True)
class SecondObserver:
    """Who watched beside the assessor and signs the same sheet."""

    name: str
    role: str


@dataclass(frozen=True, kw_only=True)
class StepSeen:
    """What was seen of one step."""

    step: str
    seen: str
    """One of ``SEEN``."""
    prompted: bool
    """Whether a hint was given."""
    note: str

    @property
    def is_shown(self) -> bool:
        """Whether the person showed the step without help."""
        return self.seen == "yes" and not self.prompted


@dataclass(frozen=True, kw_only=True)
class Observation:
    """One practical of one person, as one assessor saw it."""

    course: str
    version: str
    digest: str
    """SHA-256 of the compiled course, in hex."""
    profile: str
    language: str
    practical: str
    person: Card
    unit: str
    """Which unit was used: make, mark or number."""
    held_on: date
    location: str
    assessor: Assessor
    second: SecondObserver | None
    safety: tuple[bool, ...]
    """Whether each condition was confirmed before the first step, in the practical's order."""
    steps: tuple[StepSeen, ...]
    stopped: bool
    """Whether it was ended before its last step."""
    note: str
    result: str
    """One of ``RESULTS``: the assessor's own word."""
    started: str
    """RFC 3339, UTC, whole seconds, by the clock of the device."""
    ended: str


def to_json(observation: Observation) -> dict[str, Json]:
    """Return the observation as plain data."""
    person, second = observation.person, observation.second
    assessor = observation.assessor
    return {
        "format": FORMAT,
        "course": observation.course,
        "version": observation.version,
        "digest": observation.digest,
        "profile": observation.profile,
        "language": observation.language,
        "practical": observation.practical,
        "person": {"id": person.id, "name": person.name, "workplace": person.workplace},
        "unit": observation.unit,
        "held-on": observation.held_on.isoformat(),
        "location": observation.location,
        "assessor": {"name": assessor.name, "role": assessor.role, "basis": assessor.basis},
        "second": None if second is None else {"name": second.name, "role": second.role},
        "safety": list(observation.safety),
        "steps": [_step_to_json(step) for step in observation.steps],
        "stopped": observation.stopped,
        "note": observation.note,
        "result": observation.result,
        "started": observation.started,
        "ended": observation.ended,
    }


def _step_to_json(step: StepSeen) -> dict[str, Json]:
    return {"id": step.step, "seen": step.seen, "prompted": step.prompted, "note": step.note}


def write(observation: Observation) -> bytes:
    """Return the bytes of the observation's file."""
    return canonical.write(to_json(observation))


def read(data: bytes) -> Observation:
    """Return the observation in a file's bytes.

    Raises ``canonical.NotCanonical`` where the bytes are not canonical, and NotAnObservation for anything else.
    """
    found = canonical.read(data)
    if not isinstance(found, dict) or found.get("format") != FORMAT:
        raise NotAnObservation("O001", f"The file does not say that it is a “{FORMAT}”.")
    if sorted(found) != list(_MEMBERS):
        odd = [member[:40] for member in sorted(set(found) ^ set(_MEMBERS))[: len(_MEMBERS)]]
        raise NotAnObservation(
            "O002", f"These members are missing, or should not be there: {', '.join(odd)}."
        )
    record: dict[str, Any] = found
    for member in ("course", "version", "profile", "language", "practical"):
        _need(is_text(record[member]) and record[member] != "", member, "a short text that is not empty")
    for member in ("unit", "location", "note"):
        _need(is_text(record[member]), member, "a short text")
    digest = record["digest"]
    _need(isinstance(digest, str) and bool(_DIGEST.fullmatch(digest)), "digest", "64 hexadecimal digits")
    _need(isinstance(record["stopped"], bool), "stopped", "true or false")
    _need(record["result"] in RESULTS, "result", f"one of {', '.join(RESULTS)}")
    _need(_are_flags(record["safety"]), "safety", "a list of true and false")
    for member in ("started", "ended"):
        _need(_is_time(record[member], _STAMP), member, "a time such as 2026-11-24T09:00:00Z")
    _need(_is_time(record["held-on"], _DAY), "held-on", "a day such as 2026-11-24")
    person = _texts(record["person"], "person", ("id", "name", "workplace"))
    second = record["second"]
    return Observation(
        course=record["course"],
        version=record["version"],
        digest=digest,
        profile=record["profile"],
        language=record["language"],
        practical=record["practical"],
        person=Card(**person),
        unit=record["unit"],
        held_on=date.fromisoformat(record["held-on"]),
        location=record["location"],
        assessor=Assessor(**_texts(record["assessor"], "assessor", ("name", "role", "basis"))),
        second=None if second is None else SecondObserver(**_texts(second, "second", ("name", "role"))),
        safety=tuple(record["safety"]),
        steps=tuple(_steps(record["steps"])),
        stopped=record["stopped"],
        note=record["note"],
        result=record["result"],
        started=record["started"],
        ended=record["ended"],
    )


def _texts(value: object, member: str, names: tuple[str, ...]) -> dict[str, str]:
    _need(
        isinstance(value, dict) and sorted(value) == sorted(names) and all(map(is_text, value.values())),
        member,
        f"{', '.join(names[:-1])} and {names[-1]}, each a short text",
    )
    assert isinstance(value, dict)
    return value


def _steps(value: object) -> Iterable[StepSeen]:
    shape = "a list of different steps, each with id, seen, prompted and note"
    _need(isinstance(value, list), "steps", shape)
    assert isinstance(value, list)
    for each in value:
        _need(isinstance(each, dict) and sorted(each) == ["id", "note", "prompted", "seen"], "steps", shape)
        _need(is_text(each["id"]) and is_text(each["note"]), "steps", shape)
        _need(isinstance(each["prompted"], bool) and each["seen"] in SEEN, "steps", shape)
        yield StepSeen(step=each["id"], seen=each["seen"], prompted=each["prompted"], note=each["note"])
    _need(len({each["id"] for each in value}) == len(value), "steps", shape)


def _are_flags(value: object) -> bool:
    return isinstance(value, list) and all(isinstance(each, bool) for each in value)


def _is_time(value: object, pattern: re.Pattern[str]) -> bool:
    if not isinstance(value, str) or not pattern.fullmatch(value):
        return False
    try:
        datetime.fromisoformat(value)
    except ValueError:
        return False
    return True


def _need(holds: bool, member: str, shape: str) -> None:
    if not holds:
        raise NotAnObservation("O002", f"The member “{member}” is not {shape}.")

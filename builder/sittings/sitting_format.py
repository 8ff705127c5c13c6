"""A sitting as canonical JSON, format 1: what its private file holds, and how strictly that is read."""

from __future__ import annotations

import re
from datetime import date, datetime
from typing import Any
from uuid import UUID

from journeybook.marking import attempt as attempts
from journeybook.marking import canonical
from journeybook.marking import observation as observations
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.kind import Json
from journeybook.sittings.sitting import (
    ALPHABET,
    WAYS,
    Assessor,
    CertificateIssued,
    Countersigned,
    ObservationHeld,
    Place,
    Received,
    Refused,
    SetAside,
    Sitting,
    SittingRefused,
    Vouched,
    why_not,
    why_not_seen,
)  # fmt: skip

FORMAT = "journeybook sitting 1"
SIZE_CAP = 64 << 20
"""Bytes: a thousand places with everything they can hold stay below it."""
_TICKET = re.compile(rf"[{ALPHABET}]{{5}}-[{ALPHABET}]{{5}}")
_DIGEST = re.compile(r"[0-9a-f]{64}")
_STAMP = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z")
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_MOST_MINUTES = 24 * 60


def to_bytes(sitting: Sitting) -> bytes:
    """Return the bytes of the file."""
    trained = sitting.trained
    return canonical.write(
        {
            "format": FORMAT,
            "id": sitting.id,
            "course": sitting.course,
            "version": sitting.version,
            "digest": sitting.digest,
            "profile": sitting.profile,
            "language": sitting.language,
            "title": sitting.title,
            "held-on": sitting.held_on.isoformat(),
            "location": sitting.location,
            "assessor": {"name": sitting.assessor.name, "basis": sitting.assessor.basis},
            "identity": sitting.identity,
            "trainer": sitting.trainer,
            "trained": None if trained is None else trained.isoformat(),
            "minutes": sitting.minutes,
            "made": sitting.made,
            "passphrase": sitting.passphrase,
            "people": [_place_to_json(place) for place in sitting.people],
            "refused": [_refused_to_json(each) for each in sitting.refused],
        }
    )


def _place_to_json(place: Place) -> dict[str, Json]:
    certificate = place.certificate
    record: dict[str, Json] = {
        "ticket": place.ticket,
        "id": place.id,
        "name": place.name,
        "workplace": place.workplace,
        "extra-minutes": place.extra_minutes,
        "oral": place.oral,
        "avoid": list(place.avoid),
        "attempt-number": place.attempt_number,
        "attempt": None if place.attempt is None else _received_to_json(place.attempt),
        "vouched": None if place.vouched is None else _vouched_to_json(place.vouched),
        "observations": [_observation_to_json(held) for held in place.observations],
        "certificate": None if certificate is None else {
            "id": certificate.id, "issued": certificate.issued, "file": certificate.file,
        },
    }  # fmt: skip
    if place.set_aside:
        record["set-aside"] = [_set_aside_to_json(each) for each in place.set_aside]
    return record


def _received_to_json(attempt: Received) -> dict[str, Json]:
    return {
        "text": attempt.text,
        "fingerprint": attempt.fingerprint,
        "received": attempt.received,
        "by-way-of": attempt.by_way_of,
        "from": attempt.source,
    }


def _vouched_to_json(word: Vouched) -> dict[str, Json]:
    return {"by": word.by, "on": word.on.isoformat(), "identity": word.identity}


def _set_aside_to_json(each: SetAside) -> dict[str, Json]:
    return {
        "attempt": _received_to_json(each.attempt),
        "vouched": None if each.vouched is None else _vouched_to_json(each.vouched),
        "answered-by": each.answered_by,
        "by": each.by,
        "on": each.on.isoformat(),
        "why": each.why,
    }


def _observation_to_json(held: ObservationHeld) -> dict[str, Json]:
    signed = held.countersigned
    return {
        "text": held.text,
        "fingerprint": held.fingerprint,
        "received": held.received,
        "countersigned": None if signed is None else {"by": signed.by, "on": signed.on.isoformat()},
    }


def _refused_to_json(each: Refused) -> dict[str, Json]:
    return {
        "from": each.source,
        "received": each.received,
        "fingerprint": each.fingerprint,
        "ticket": each.ticket,
        "why": each.why,
    }


def from_bytes(data: bytes) -> Sitting:
    """Return the sitting in a file's bytes; raises SittingRefused for anything that is not exactly one."""
    try:
        found = canonical.read(data, SIZE_CAP)
    except canonical.NotCanonical as refused:
        raise _not_one(refused.detail) from refused
    if not isinstance(found, dict) or found.get("format") != FORMAT:
        raise _not_one(f"It does not say that it is a “{FORMAT}”.")
    record = _members(found, "The file", (
        "assessor", "course", "digest", "format", "held-on", "id", "identity", "language", "location", "made",
        "minutes", "passphrase", "people", "profile", "refused", "title", "trained", "trainer", "version",
    ))  # fmt: skip
    for member in ("course", "version", "profile", "language", "title", "passphrase"):
        _need(
            attempts.is_text(record[member]) and record[member] != "",
            member,
            "a short text that is not empty",
        )
    _need(
        isinstance(record["digest"], str) and bool(_DIGEST.fullmatch(record["digest"])),
        "digest",
        "64 hex digits",
    )
    _need(_is_uuid(record["id"]), "id", "a UUID of version 4")
    assessor = _members(record["assessor"], "assessor", ("basis", "name"))
    people = tuple(_place(each) for each in _list(record["people"], "people"))
    for what, held in (("ticket", [p.ticket for p in people]), ("id", [p.id for p in people])):
        _need(len(set(held)) == len(held), "people", f"a list in which each {what} stands once")
    sitting = Sitting(
        id=record["id"],
        course=record["course"],
        version=record["version"],
        digest=record["digest"],
        profile=record["profile"],
        language=record["language"],
        title=record["title"],
        held_on=_day(record["held-on"], "held-on"),
        location=_text(record["location"], "location"),
        assessor=Assessor(
            name=_text(assessor["name"], "assessor"), basis=_text(assessor["basis"], "assessor")
        ),
        identity=_text(record["identity"], "identity"),
        trainer=_text(record["trainer"], "trainer"),
        trained=None if record["trained"] is None else _day(record["trained"], "trained"),
        minutes=_count(record["minutes"], "minutes", 1, _MOST_MINUTES),
        made=_stamp(record["made"], "made"),
        passphrase=record["passphrase"],
        people=people,
        refused=tuple(_refused(each) for each in _list(record["refused"], "refused")),
    )
    for place in people:
        for handed_in in (place.attempt, *(each.attempt for each in place.set_aside)):
            why = why_not(sitting, attempts.read(handed_in.text.encode())) if handed_in is not None else ""
            if why:
                raise _not_one(f"The attempt at the ticket {place.ticket} does not belong there: {why}")
        # A signed observation that was moved to somebody else's place would be theirs on the certificate.
        for seen in place.observations:
            why = why_not_seen(sitting, place, observations.read(seen.text.encode()))
            if why:
                raise _not_one(f"An observation at the ticket {place.ticket} does not belong there: {why}")
    return sitting


def _place(value: object) -> Place:
    # A place at which nothing was ever set aside does not say so: files from before that could be are such.
    more = ("set-aside",) if isinstance(value, dict) and value.get("set-aside") else ()
    record = _members(value, "people", (
        "attempt", "attempt-number", "avoid", "certificate", "extra-minutes", "id", "name", "observations", "oral",
        "ticket", "vouched", "workplace", *more,
    ))  # fmt: skip
    ticket = record["ticket"]
    _need(
        isinstance(ticket, str) and bool(_TICKET.fullmatch(ticket)),
        "ticket",
        "two groups of five, ABCDE-FGHJK",
    )
    _need(isinstance(record["oral"], bool), "oral", "true or false")
    _need(attempts.is_texts(record["avoid"]), "avoid", "a list of different ids")
    certificate = record["certificate"]
    if certificate is not None:
        certificate = _members(certificate, "certificate", ("file", "id", "issued"))
    return Place(
        ticket=ticket,
        id=_text(record["id"], "id"),
        name=_text(record["name"], "name"),
        workplace=_text(record["workplace"], "workplace"),
        extra_minutes=_count(record["extra-minutes"], "extra-minutes", 0, _MOST_MINUTES),
        oral=record["oral"],
        avoid=tuple(record["avoid"]),
        attempt_number=_count(record["attempt-number"], "attempt-number", 1, 1000),
        attempt=None if record["attempt"] is None else _received(record["attempt"], ticket),
        vouched=_vouched(record["vouched"]),
        observations=tuple(_held(each) for each in _list(record["observations"], "observations")),
        certificate=None if certificate is None else CertificateIssued(
            id=_text(certificate["id"], "certificate"),
            issued=_stamp(certificate["issued"], "certificate"),
            file=_text(certificate["file"], "certificate"),
        ),
        set_aside=tuple(_set_aside(each, ticket) for each in _list(record.get("set-aside", []), "set-aside")),
    )  # fmt: skip


def _vouched(value: object) -> Vouched | None:
    if value is None:
        return None
    word = _members(value, "vouched", ("by", "identity", "on"))
    return Vouched(
        by=_text(word["by"], "vouched"),
        on=_day(word["on"], "vouched"),
        identity=_text(word["identity"], "vouched"),
    )


def _set_aside(value: object, ticket: str) -> SetAside:
    record = _members(value, "set-aside", ("answered-by", "attempt", "by", "on", "vouched", "why"))
    return SetAside(
        attempt=_received(record["attempt"], ticket),
        vouched=_vouched(record["vouched"]),
        answered_by=_text(record["answered-by"], "set-aside"),
        by=_text(record["by"], "set-aside"),
        on=_day(record["on"], "set-aside"),
        why=_text(record["why"], "set-aside"),
    )


def _received(value: object, ticket: str) -> Received:
    record = _members(value, "attempt", ("by-way-of", "fingerprint", "from", "received", "text"))
    _need(record["by-way-of"] in WAYS, "by-way-of", f"one of {', '.join(WAYS)}")
    text = _true_record(record, "attempt")
    try:
        found = attempts.read(text.encode())
    except (canonical.NotCanonical, attempts.NotAnAttempt) as refused:
        raise _not_one(f"What stands as the attempt of {ticket} is none: {refused}") from refused
    _need(found.seed == ticket, "attempt", f"an attempt with the ticket {ticket}")
    return Received(
        text=text,
        fingerprint=record["fingerprint"],
        received=_stamp(record["received"], "received"),
        by_way_of=record["by-way-of"],
        source=_text(record["from"], "from"),
    )


def _held(value: object) -> ObservationHeld:
    record = _members(value, "observations", ("countersigned", "fingerprint", "received", "text"))
    text = _true_record(record, "observations")
    try:
        observations.read(text.encode())
    except (canonical.NotCanonical, observations.NotAnObservation) as refused:
        raise _not_one(f"What stands as an observation is none: {refused}") from refused
    signed = record["countersigned"]
    if signed is not None:
        signed = _members(signed, "countersigned", ("by", "on"))
    return ObservationHeld(
        text=text,
        fingerprint=record["fingerprint"],
        received=_stamp(record["received"], "received"),
        countersigned=None if signed is None else Countersigned(
            by=_text(signed["by"], "countersigned"), on=_day(signed["on"], "countersigned")
        ),
    )  # fmt: skip


def _true_record(record: dict[str, Any], member: str) -> str:
    text = record["text"]
    _need(isinstance(text, str), member, "a record as text")
    _need(record["fingerprint"] == fingerprint(text.encode()), member, "a record with its own fingerprint")
    return str(text)


def _refused(value: object) -> Refused:
    record = _members(value, "refused", ("fingerprint", "from", "received", "ticket", "why"))
    return Refused(
        source=_text(record["from"], "from"),
        received=_stamp(record["received"], "received"),
        fingerprint=_text(record["fingerprint"], "fingerprint"),
        ticket=_text(record["ticket"], "ticket"),
        why=_text(record["why"], "why"),
    )


def _members(value: object, member: str, names: tuple[str, ...]) -> dict[str, Any]:
    if not isinstance(value, dict) or sorted(value) != sorted(names):
        odd = sorted(set(value) ^ set(names)) if isinstance(value, dict) else []
        told = f": {', '.join(name[:40] for name in odd[:20])}" if odd else ""
        raise _not_one(f"“{member}” has not exactly the members it should have{told}.")
    return value


def _list(value: object, member: str) -> list[Any]:
    _need(isinstance(value, list), member, "a list")
    assert isinstance(value, list)
    return value


def _text(value: object, member: str) -> str:
    _need(attempts.is_text(value), member, "a short text")
    return str(value)


def _count(value: object, member: str, least: int, most: int) -> int:
    _need(type(value) is int and least <= value <= most, member, f"a whole number from {least} to {most}")
    assert isinstance(value, int)
    return value


def _day(value: object, member: str) -> date:
    _need(_is_time(value, _DAY), member, "a day such as 2026-11-24")
    return date.fromisoformat(str(value))


def _stamp(value: object, member: str) -> str:
    _need(_is_time(value, _STAMP), member, "a time such as 2026-11-24T09:00:00Z")
    return str(value)


def _is_time(value: object, pattern: re.Pattern[str]) -> bool:
    if not isinstance(value, str) or not pattern.fullmatch(value):
        return False
    try:
        datetime.fromisoformat(value)
    except ValueError:
        return False
    return True


def _is_uuid(value: object) -> bool:
    try:
        return isinstance(value, str) and str(UUID(value, version=4)) == value
    except ValueError:
        return False


def _need(holds: bool, member: str, shape: str) -> None:
    if not holds:
        raise _not_one(f"The member “{member}” is not {shape}.")


def _not_one(detail: str) -> SittingRefused:
    return SittingRefused(
        "H001",
        f"The file is not the private file of a sitting. {detail}",
        "Take the file as `journeybook seal` wrote it.",
    )

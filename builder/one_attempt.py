"""A single attempt of the open check as a sitting of one, so that one rule says what everybody has earned."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from journeybook.marking import attempt as attempts
from journeybook.marking import observation as observations
from journeybook.marking.canonical import NotCanonical
from journeybook.marking.fingerprint import fingerprint
from journeybook.sittings.class_file import composed
from journeybook.sittings.sitting import (
    Assessor,
    Countersigned,
    ObservationHeld,
    Place,
    Received,
    Sitting,
    SittingRefused,
    Vouched,
)


@dataclass(frozen=True, kw_only=True)
class Word:
    """Somebody's word for a record, and its fingerprint as it stands on their paper."""

    by: str
    on: date
    identity: str = ""
    """How it was checked who the person was."""
    fingerprint: str = ""


def sitting_of_one(
    data: bytes,
    *,
    source: str,
    number: int = 1,
    vouched: Word | None = None,
    seen: Sequence[tuple[str, bytes]] = (),
    countersigned: Word | None = None,
    person: str = "",
    trainer: str = "",
    trained: date | None = None,
) -> Sitting:
    """Return a sitting whose only place holds the attempt in ``data``, and the observations ``seen`` (name, bytes).

    ``person`` is the number that their observations may bear in place of the id of the card. The sitting's day is that
    of the attempt, by the clock of the device. Raises SittingRefused for records that are none, are of somebody else,
    or have another fingerprint than the paper.
    """
    try:
        record = attempts.read(data)
    except NotCanonical as error:
        raise _no_record(source, error.detail) from error
    except attempts.NotAnAttempt as error:
        raise _no_record(source, error.message) from error
    print_of_it = fingerprint(data)
    day = date.fromisoformat(record.ended[:10])
    if vouched is not None:
        _same(vouched, print_of_it, day)
    card = record.card
    if not card.name.strip() or not card.id.strip():
        raise SittingRefused(
            "H003",
            f"The card of {source} has no {'number' if card.name.strip() else 'name'}, and a certificate names both.",
            "Let the person enter both on their card and take the check on it.",
        )
    place = Place(
        ticket=record.seed,
        id=card.id,
        name=card.name,
        workplace=card.workplace,
        avoid=record.avoid,
        attempt_number=number,
        attempt=Received(
            text=data.decode(),
            fingerprint=print_of_it,
            received=record.ended,
            by_way_of="file",
            source=source,
        ),
        vouched=None
        if vouched is None
        else Vouched(by=vouched.by, on=vouched.on, identity=composed(vouched.identity)),
        observations=tuple(_observation(record, name, each, person, countersigned) for name, each in seen),
    )
    return Sitting(
        id="", course=record.course, version=record.version, digest=record.digest, profile=record.profile,
        language=record.language, title="", held_on=day, location="",
        assessor=Assessor(name=vouched.by if vouched else "", basis=""),
        identity=vouched.identity if vouched else "", trainer=trainer, trained=trained, minutes=1,
        made=record.ended, passphrase="", people=(place,),
    )  # fmt: skip


def _same(vouched: Word, print_of_it: str, day: date) -> None:
    said = "".join(vouched.fingerprint.upper().replace("-", " ").split())
    if said != print_of_it.replace("-", ""):
        raise SittingRefused(
            "H004",
            f"The fingerprint given is {vouched.fingerprint[:40]}; that of the attempt is {print_of_it}.",
            "Compare it with the paper, letter by letter; nobody vouches for another attempt than the one they saw.",
        )
    # A zone may put the device's day one ahead of the person's.
    if (day - vouched.on).days > 1:
        raise SittingRefused(
            "H004",
            f"Nobody can vouch on {vouched.on} for what ended on {day}.",
            "Give the day on which it was confirmed with --on.",
        )


def _observation(
    record: attempts.Attempt, name: str, data: bytes, person: str, countersigned: Word | None
) -> ObservationHeld:
    try:
        seen = observations.read(data)
    except NotCanonical as error:
        raise _no_record(name, error.detail) from error
    except observations.NotAnObservation as error:
        raise _no_record(name, error.message) from error
    theirs, ours = seen.person, record.card
    known = {composed(ours.id), person} - {""}
    if composed(theirs.id) not in known or composed(theirs.name) != composed(ours.name):
        raise SittingRefused(
            "H003",
            f"The observation {name} is of {theirs.name} ({theirs.id}), the attempt of {ours.name} ({ours.id}).",
            "Give the observations of the person whose attempt it is.",
        )
    return ObservationHeld(
        text=data.decode(),
        fingerprint=fingerprint(data),
        received=seen.ended,
        countersigned=None
        if countersigned is None
        else Countersigned(by=countersigned.by, on=countersigned.on),
    )


def _no_record(name: str, detail: str) -> SittingRefused:
    return SittingRefused("H003", f"{name} is no record of ours. {detail}", "Give the file as it was saved.")

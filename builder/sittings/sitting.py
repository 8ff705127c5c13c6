"""A sitting as the employer keeps it: who may sit, what each handed in, what was observed and issued.

Everything here is frozen; each step of the day returns a new sitting and touches no file. Two things are never
done: what a person handed in is never put in the place of something else, and nothing that came in is dropped.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date

from journeybook.marking import attempt as attempts
from journeybook.marking import observation as observations
from journeybook.marking.fingerprint import fingerprint

ALPHABET = "ABCDEFGHJKMNPQRSTVWXYZ23456789"
"""Letters and digits of tickets: none that is taken for another when read out or written by hand."""
WAYS = ("file", "code", "keyed")
"""How an attempt came: as a file, off codes on a screen, or keyed in from paper."""


class SittingRefused(ValueError):  # noqa: N818 - it says what happened
    """Something that a sitting does not take."""

    def __init__(self, code: str, message: str, mend: str) -> None:
        """Keep the code of the problem, the sentence for people, and what to do about it."""
        self.code = code
        self.message = message
        self.mend = mend
        super().__init__(message)


@dataclass(frozen=True, kw_only=True)
class Assessor:
    """Who holds the sitting, and by what right."""

    name: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class Received:
    """An attempt as it came."""

    text: str
    """The canonical record."""
    fingerprint: str
    received: str
    """RFC 3339, UTC, whole seconds."""
    by_way_of: str
    """One of ``WAYS``."""
    source: str
    """Name of the file, or empty."""


@dataclass(frozen=True, kw_only=True)
class Vouched:
    """Who confirms that the fingerprint on the class sheet is that of the attempt, and who the person was."""

    by: str
    on: date
    identity: str
    """How it was checked."""


@dataclass(frozen=True, kw_only=True)
class Countersigned:
    """Who confirms that the paper with this fingerprint is signed."""

    by: str
    on: date


@dataclass(frozen=True, kw_only=True)
class ObservationHeld:
    """An observation as it came."""

    text: str
    fingerprint: str
    received: str
    countersigned: Countersigned | None = None


@dataclass(frozen=True, kw_only=True)
class CertificateIssued:
    """Which certificate was issued for a place."""

    id: str
    """``urn:uuid:…``"""
    issued: str
    file: str


@dataclass(frozen=True, kw_only=True)
class SetAside:
    """An attempt that was handed in with a person's ticket by somebody else; kept whole."""

    attempt: Received
    vouched: Vouched | None
    """Who had vouched for it before it was known."""
    answered_by: str
    """The id of the person of the sitting who answered; empty where it was nobody of the class."""
    by: str
    """Who set it aside."""
    on: date
    why: str


@dataclass(frozen=True, kw_only=True)
class Place:
    """One person's place in the sitting."""

    ticket: str
    id: str
    name: str
    workplace: str
    extra_minutes: int = 0
    oral: bool = False
    avoid: tuple[str, ...] = ()
    """Questions that the form tries not to repeat."""
    attempt_number: int = 1
    attempt: Received | None = None
    vouched: Vouched | None = None
    observations: tuple[ObservationHeld, ...] = ()
    certificate: CertificateIssued | None = None
    set_aside: tuple[SetAside, ...] = ()
    """Attempts with this ticket that were not this person's, oldest first."""


@dataclass(frozen=True, kw_only=True)
class Refused:
    """A record that came and was not entered; kept, so that it can be looked into."""

    source: str
    received: str
    fingerprint: str
    ticket: str
    why: str


@dataclass(frozen=True, kw_only=True)
class Sitting:
    """The whole sitting."""

    id: str
    """UUID, version 4."""
    course: str
    version: str
    digest: str
    """SHA-256 of the compiled course, in hex."""
    profile: str
    language: str
    title: str
    held_on: date
    location: str
    assessor: Assessor
    identity: str
    """How identity is checked."""
    trainer: str
    trained: date | None
    minutes: int
    made: str
    passphrase: str = field(repr=False)
    """Of the room's page; no message that shows a sitting shows it."""
    people: tuple[Place, ...]
    refused: tuple[Refused, ...] = ()

    def place(self, ticket: str) -> Place | None:
        """The place of a ticket."""
        return next((place for place in self.people if place.ticket == ticket), None)


@dataclass(frozen=True, kw_only=True)
class Taken:
    """What became of an attempt that came."""

    sitting: Sitting
    outcome: str
    """``entered``, ``already held`` or ``refused``."""
    ticket: str
    fingerprint: str
    why: str = ""
    """For ``refused``, and for what is held but was set aside: a sentence for people."""


def with_attempt(sitting: Sitting, data: bytes, *, received: str, by_way_of: str, source: str = "") -> Taken:
    """Enter the bytes of an attempt; what cannot be entered is kept under ``refused``.

    The same attempt again changes nothing; another one on a used ticket is refused. Whether the form follows from
    the ticket is for ``remark`` to say, which has the compiled course.
    Raises ``NotCanonical`` or ``NotAnAttempt`` for bytes that are no attempt at all.
    """
    if by_way_of not in WAYS:
        raise ValueError(f"{by_way_of!r} is none of {WAYS}")
    record = attempts.read(data)
    print_of_it, ticket = fingerprint(data), record.seed
    place = sitting.place(ticket)
    if place is not None and place.attempt is not None and place.attempt.text.encode() == data:
        return Taken(sitting=sitting, outcome="already held", ticket=ticket, fingerprint=print_of_it)
    aside = (
        next((each for each in place.set_aside if each.attempt.text.encode() == data), None)
        if place
        else None
    )
    if aside is not None:
        told = f"It was set aside on {aside.on} by {aside.by}: {aside.why}"
        return Taken(
            sitting=sitting, outcome="already held", ticket=ticket, fingerprint=print_of_it, why=told
        )
    why = why_not(sitting, record)
    if place is not None and not why and place.attempt is not None:
        why = (
            f"The ticket {ticket} of {place.name} is used: the attempt {place.attempt.fingerprint} was handed in "
            "with it, and a ticket stands for one attempt."
        )
    if place is None or why:
        line = Refused(source=source, received=received, fingerprint=print_of_it, ticket=ticket[:40], why=why)
        known = any((each.fingerprint, each.why) == (line.fingerprint, line.why) for each in sitting.refused)
        kept = sitting if known else replace(sitting, refused=(*sitting.refused, line))
        return Taken(sitting=kept, outcome="refused", ticket=ticket, fingerprint=print_of_it, why=why)
    entered = Received(
        text=data.decode(), fingerprint=print_of_it, received=received, by_way_of=by_way_of, source=source
    )
    after = _with_place(sitting, ticket, lambda one: replace(one, attempt=entered))
    return Taken(sitting=after, outcome="entered", ticket=ticket, fingerprint=print_of_it)


def why_not(sitting: Sitting, record: attempts.Attempt) -> str:
    """Why an attempt does not belong to the sitting; empty where it does."""
    place = sitting.place(record.seed)
    if place is None:
        return f"No place of this sitting has the ticket {record.seed[:40]}."
    for name, theirs, ours in (
        ("course", record.course, sitting.course),
        ("version", record.version, sitting.version),
        ("digest", record.digest, sitting.digest),
        ("profile", record.profile, sitting.profile),
        ("language", record.language, sitting.language),
    ):
        if theirs != ours:
            return f"Its {name} is {theirs[:64]}; that of the sitting is {ours}."
    card = record.card
    if (card.id, card.name, card.workplace) != (place.id, place.name, place.workplace):
        return f"It names {card.name} ({card.id}); the ticket is that of {place.name} ({place.id})."
    if record.avoid != place.avoid:
        return "Its form was drawn with other questions to avoid than those of the sitting."
    return ""


def with_observation(sitting: Sitting, ticket: str, data: bytes, *, received: str) -> Sitting:
    """Add an observation to a place; the same one again changes nothing.

    Raises ``NotCanonical`` or ``NotAnObservation`` for bytes that are none, SittingRefused where it is of another
    person or course.
    """
    record = observations.read(data)
    place = place_or_refuse(sitting, ticket)
    why = why_not_seen(sitting, place, record)
    if why:
        raise SittingRefused(
            "H003", why, "Enter it with the ticket of the person, where that course is kept."
        )
    text = data.decode()
    if any(held.text == text for held in place.observations):
        return sitting
    line = ObservationHeld(text=text, fingerprint=fingerprint(data), received=received)
    return _with_place(sitting, ticket, lambda one: replace(one, observations=(*one.observations, line)))


def why_not_seen(sitting: Sitting, place: Place, record: observations.Observation) -> str:
    """Why an observation is not of the place's person, or of another course; empty where it belongs there."""
    if (record.person.id, record.person.name) != (place.id, place.name):
        return (
            f"The observation is of {record.person.name} ({record.person.id}), the ticket {place.ticket} is that of "
            f"{place.name} ({place.id})."
        )
    if (record.course, record.digest) != (sitting.course, sitting.digest):
        return (
            f"The observation belongs to {record.course} {record.version}, state {record.digest[:12]}; the sitting "
            f"to {sitting.course} {sitting.version}, state {sitting.digest[:12]}."
        )
    return ""


def vouched(sitting: Sitting, ticket: str, *, by: str, on: date, identity: str) -> Sitting:
    """Note that somebody confirms the attempt's fingerprint and the person; refused without an attempt."""
    place = place_or_refuse(sitting, ticket)
    if place.attempt is None:
        raise SittingRefused(
            "H004",
            f"{place.name} has handed in nothing yet, so there is nothing to vouch for.",
            "Take in the attempt first.",
        )
    word = Vouched(by=by, on=on, identity=identity)
    return _with_place(sitting, ticket, lambda one: replace(one, vouched=word))


def countersigned(sitting: Sitting, ticket: str, print_of_it: str, *, by: str, on: date) -> Sitting:
    """Note that the paper of an observation with this fingerprint is signed."""
    place = place_or_refuse(sitting, ticket)
    if not any(held.fingerprint == print_of_it for held in place.observations):
        raise SittingRefused(
            "H004",
            f"No observation of {place.name} has the fingerprint {print_of_it[:40]}.",
            "Compare it with the paper, letter by letter.",
        )
    signed = Countersigned(by=by, on=on)
    held = tuple(
        replace(each, countersigned=signed) if each.fingerprint == print_of_it else each
        for each in place.observations
    )
    return _with_place(sitting, ticket, lambda one: replace(one, observations=held))


def with_certificate(sitting: Sitting, ticket: str, issued: CertificateIssued) -> Sitting:
    """Note the certificate that was issued for a place."""
    place_or_refuse(sitting, ticket)
    return _with_place(sitting, ticket, lambda one: replace(one, certificate=issued))


def place_or_refuse(sitting: Sitting, ticket: str) -> Place:
    """Return the place of a ticket; raises SittingRefused where there is none."""
    place = sitting.place(ticket)
    if place is None:
        raise SittingRefused(
            "H002",
            f"No place of this sitting has the ticket {ticket[:40]}.",
            "Compare the ticket with the class sheet, letter by letter.",
        )
    return place


def _with_place(sitting: Sitting, ticket: str, step: Callable[[Place], Place]) -> Sitting:
    return replace(
        sitting,
        people=tuple(step(place) if place.ticket == ticket else place for place in sitting.people),
    )


__all__ = [
    "ALPHABET", "WAYS", "Assessor", "CertificateIssued", "Countersigned", "ObservationHeld", "Place", "Received",
    "Refused", "SetAside", "Sitting", "SittingRefused", "Taken", "Vouched", "countersigned", "place_or_refuse",
    "vouched", "why_not", "why_not_seen", "with_attempt", "with_certificate", "with_observation",
]  # fmt: skip

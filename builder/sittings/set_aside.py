"""Setting aside what somebody else handed in with a person's ticket, and counting what each person did answer."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from journeybook.sittings.sitting import Received, SetAside, Sitting, SittingRefused, place_or_refuse


def with_set_aside(
    sitting: Sitting, ticket: str, print_of_it: str, *, by: str, on: date, why: str, answered_by: str = ""
) -> Sitting:
    """Set aside an attempt that somebody else handed in with a person's ticket: the place is free for their own.

    Whoever of the class did answer has one attempt more behind them. Refused for a person's own attempt, which counts
    however it went, and once a certificate stands on it.
    """
    place = place_or_refuse(sitting, ticket)
    if place.attempt is None or place.attempt.fingerprint != print_of_it:
        raise SittingRefused(
            "H011",
            f"No attempt {print_of_it[:40]} is held for {place.name}.",
            "Compare the fingerprint with `journeybook class-state`.",
        )
    if place.certificate is not None:
        raise SittingRefused(
            "H011",
            f"The certificate {place.certificate.id} was issued on it.",
            "Withdraw the certificate first; the attempt stays where it is, as what the certificate stood on.",
        )
    if answered_by == place.id:
        raise SittingRefused(
            "H011",
            f"The attempt is {place.name}'s own, and their own attempt counts.",
            "For another try make a new sitting, and name this one with --earlier.",
        )
    if by in {each.name for each in sitting.people if each.id in (place.id, answered_by)}:
        raise SittingRefused(
            "H011",
            f"{by} is the one whose attempt it is about.",
            "Let the assessor or the trainer set it aside.",
        )
    if answered_by and all(each.id != answered_by for each in sitting.people):
        raise SittingRefused(
            "H011",
            f"Nobody of this sitting has the id {answered_by[:40]}.",
            "Give the id as in the class file; leave it out where it was nobody of the class.",
        )
    line = SetAside(
        attempt=place.attempt, vouched=place.vouched, answered_by=answered_by, by=by, on=on, why=why
    )
    freed = replace(place, attempt=None, vouched=None, set_aside=(*place.set_aside, line))
    people = (freed if each.ticket == ticket else each for each in sitting.people)
    return replace(
        sitting,
        people=tuple(
            replace(each, attempt_number=each.attempt_number + 1) if each.id == answered_by else each
            for each in people
        ),
    )


def attempts_of(sitting: Sitting, person: str) -> tuple[Received, ...]:
    """Every attempt that the person with this id made in the sitting, on whichever ticket."""
    own = (place.attempt for place in sitting.people if place.id == person and place.attempt is not None)
    elsewhere = (
        each.attempt for place in sitting.people for each in place.set_aside if each.answered_by == person
    )
    return (*own, *elsewhere)

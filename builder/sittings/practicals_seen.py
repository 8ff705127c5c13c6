"""What was seen of each practical of a course: of the countersigned observations that fit, the last one decides.

Somebody who was competent and on a later day is not, is not (common practice, no source). What nobody has
countersigned decides nothing, and neither does what does not fit the course.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from journeybook.diagnostics.problem import Level
from journeybook.marking import observation as observations
from journeybook.marking.canonical import NotCanonical
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.observed import misfits
from journeybook.sittings.class_file import composed, same_name
from journeybook.sittings.sitting import ObservationHeld


@dataclass(frozen=True, kw_only=True)
class PracticalSeen:
    """What the records say of one practical."""

    practical: str
    """Its id."""
    title: str
    why: str
    """Why it does not count as observed, in sentences; empty where it does."""
    day: date = date.min
    """Of the observation that counts, as its sheet says."""
    assessor: str = ""
    """Who observed then."""
    fingerprint: str = ""

    @property
    def is_competent(self) -> bool:
        """Whether it counts as observed."""
        return not self.why


def practicals_seen(
    held: Sequence[ObservationHeld], content: Mapping[str, Any], digest: str, language: str, latest: date
) -> tuple[PracticalSeen, ...]:
    """Return what was seen of each practical, in the course's order.

    ``content`` is that of compiled.json and ``digest`` its SHA-256; ``latest`` is the latest day that has begun.
    """
    records = [(each, _read(each)) for each in held]
    found = []
    for id_, practical in content["public"]["practicals"].items():
        texts = practical["texts"]
        title = str(texts.get(language, texts[content["languages"][0]])["title"])
        of_it = [(each, record) for each, record in records if record is not None and record.practical == id_]
        found.append(_seen(id_, title, of_it, content, digest, latest))
    return tuple(found)


def _seen(
    id_: str,
    title: str,
    of_it: Sequence[tuple[ObservationHeld, observations.Observation]],
    content: Mapping[str, Any],
    digest: str,
    latest: date,
) -> PracticalSeen:
    doubts: list[str] = []
    counting: list[tuple[ObservationHeld, observations.Observation]] = []
    for each, record in of_it:
        faults = [one for one in misfits(record, content, digest) if one.level is Level.FAULT]
        if faults:
            doubts.append(f"The observation {each.fingerprint} cannot stand: {faults[0].message}")
        elif record.held_on > latest:
            doubts.append(
                f"The observation {each.fingerprint} is dated {record.held_on}, which is still to come."
            )
        elif same_name(record.assessor.name, record.person.name):
            doubts.append(f"The observation {each.fingerprint} is by the very person who was observed.")
        elif each.countersigned is not None and same_name(each.countersigned.by, record.person.name):
            doubts.append(
                f"That the paper of the observation {each.fingerprint} is signed is said by the very person who was "
                "observed; let somebody else confirm it with `journeybook vouch`."
            )
        elif each.countersigned is not None and not record.held_on <= each.countersigned.on <= latest:
            when = (
                "before it was made" if each.countersigned.on < record.held_on else "which is still to come"
            )
            doubts.append(
                f"The observation {each.fingerprint} of {record.held_on} is said to be countersigned on "
                f"{each.countersigned.on}, {when}."
            )
        elif each.countersigned is None:
            doubts.append(
                f"Nobody has confirmed that the paper of the observation {each.fingerprint} is signed; "
                "`journeybook vouch` asks for it."
            )
        else:
            counting.append((each, record))
    if not counting:
        return PracticalSeen(
            practical=id_, title=title, why=" ".join(doubts) or "No observation has come in."
        )
    last, record = max(counting, key=lambda one: (one[1].held_on, one[1].ended, one[0].received))
    if record.result != "competent":
        why = f"Not yet competent on {record.held_on}, says {record.assessor.name}."
        return PracticalSeen(practical=id_, title=title, why=why)
    return PracticalSeen(
        practical=id_,
        title=title,
        why="",
        day=record.held_on,
        assessor=composed(record.assessor.name),
        fingerprint=last.fingerprint,
    )


def _read(held: ObservationHeld) -> observations.Observation | None:
    """The record, where it is one and is the very one whose fingerprint was countersigned."""
    data = held.text.encode()
    try:
        record = observations.read(data)
    except (NotCanonical, observations.NotAnObservation):
        return None
    return record if fingerprint(data) == held.fingerprint else None

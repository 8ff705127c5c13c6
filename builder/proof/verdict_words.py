"""What each verdict is called, what to do then, and what a certificate says of itself: the words of the checking page.

A test reads them from ``site_overrides/js/view/checking-view.js``, so that a page and a command never say two things.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from journeybook.marking.kind import in_questions
from journeybook.proof.certificate import Certificate
from journeybook.proof.trust_list import TrustList
from journeybook.proof.verdict import Kind, Verdict


@dataclass(frozen=True, kw_only=True)
class Saying:
    """What is said of a kind of verdict."""

    title: str
    next: str
    """What to do."""


SAYINGS: dict[Kind, Saying] = {
    "genuine": Saying(
        title="Genuine record",
        next="The record is unchanged and its signer is on the trust list. Now compare the name with an identity "
        "card, and read the two lines above. Where the paper says something else than this, the paper is false. It is "
        "a record of training, not permission to work.",
    ),
    "example": Saying(
        title="Example only",
        next="It was made to try things out, or its key is published, so that anybody can sign with it. It is worth "
        "nothing at work. Do not let the work start on it: ask for the real certificate.",
    ),
    "unknown-signer": Saying(
        title="Genuine, but signer unknown",
        next="The record is unchanged since it was signed, but it is not known here who signed it: anybody can sign "
        "something. Do not rely on it. Ask the employer for their checking page or a newer trust list.",
    ),
    "out-of-date": Saying(
        title="Out of date",
        next="The record is genuine, but today is outside its dates. Do not let the work start on it. Training has to "
        "be renewed. For a day in the past, read between which days it held.",
    ),
    "withdrawn": Saying(
        title="Withdrawn",
        next="The signer has taken this record back. Do not let the work start on it. Ask the employer why.",
    ),
    "altered": Saying(
        title="Altered",
        next="The record is not what was signed. Do not rely on anything in it. Keep the file, and tell the employer "
        "named on the paper.",
    ),
    "unreadable": Saying(
        title="No certificate found",
        next="There is no certificate in this that can be read here. Try the PDF itself, not a photo or scan of it, or "
        "the whole code. This says nothing about whether the paper is genuine.",
    ),
}
STRENGTHS: dict[str, tuple[str, str]] = {
    "supervised": ("Supervised", "A named person confirmed who answered."),
    "self-recorded": ("Self-recorded", "Nobody confirmed who answered."),
    "observed": ("Observed", "A named assessor saw all of the practical done."),
    "not observed": ("Not observed", "No assessor vouches that this person can do the work."),
}
"""Of the check, then of the practical: its name, and what it means."""
EXAMPLE = "Example only: made to try things out. It is worth nothing at work."
"""Said beside a verdict that is graver than ``example``."""
ONLY_SAID = "Nobody known stands behind what follows; it is only what the record says of itself."
"""Said above the strengths where the signer is unknown."""

LIST_IS_OLD = (
    "The trust list is old: what was withdrawn since is not known here. Ask the employer for a newer one."
)
CLOCK_IS_BEHIND = (
    "The clock here is behind the day of the trust list: set it, for nothing that is said of days "
    "can be relied on."
)
_OLD = 92
"""Days after which a list is called old: a quarter, no source."""


def is_example(found: Verdict) -> bool:
    """Return whether a certificate is for trying out, whatever else is said of it."""
    return bool((found.certificate and found.certificate.example) or (found.key and found.key.demo))


def shown(found: Verdict) -> Certificate | None:
    """Return the certificate where what it says may be shown: not what somebody has altered."""
    return None if found.kind == "altered" else found.certificate


def facts(found: Verdict) -> list[tuple[str, str]]:
    """Return label and value of what may be shown, in the order of the page; empty values are left out."""
    certificate = shown(found)
    if certificate is None:
        return []
    return [(label, value) for label, value in _lines(certificate, found) if value]


def _lines(certificate: Certificate, found: Verdict) -> Iterator[tuple[str, str]]:
    if found.withdrawn:
        yield "Withdrawn on", ": ".join(filter(None, (found.withdrawn.on, found.withdrawn.reason)))
    yield "Name", certificate.name
    yield "Staff number", certificate.person
    yield "Employer", ", ".join(filter(None, (certificate.employer, certificate.workplace)))
    yield "Course", f"{certificate.title}, {certificate.version}"
    yield "Equipment", certificate.equipment
    yield "Holds", f"{certificate.valid_from[:10]} – {certificate.retrain_by}"
    yield "Trained", _day(certificate.trained)
    yield "Check taken", _day(certificate.checked)
    yield "Practical seen", _day(certificate.observed)
    right, asked = certificate.must_pass
    marks = f"{in_questions(certificate.marks)} of {in_questions(certificate.of)}"
    yield "Marks", f"{marks}, {certificate.cut} % needed, must-pass {right} of {asked}"
    yield "Attempt", str(certificate.attempt)
    yield "Trainer", certificate.trainer
    yield "Assessor", certificate.assessor
    yield "Identity", certificate.identity
    yield "Signed by", f"{found.key.holder}, {found.key.role}" if found.key else "unknown here"
    # What ties the record to the sheets signed in ink, to its own paper, and to the course as it was that day.
    yield "Language", certificate.language
    yield "Rules of", certificate.profile
    yield "Fingerprint", certificate.fingerprint
    yield "Observations", ", ".join(certificate.observations)
    yield "Certificate", certificate.id.removeprefix("urn:uuid:")
    yield "Contents", " ".join(certificate.digest[at : at + 4] for at in range(0, 16, 4))


def age(trust: TrustList, today: date) -> int:
    """Return how many days ago the list was made; 0 for one of a day to come, or of none that the calendar has."""
    try:
        return max(0, (today - date.fromisoformat(trust.date)).days)
    except ValueError:
        return 0


def doubt(trust: TrustList, today: date) -> str:
    """Return what the day of a list makes doubtful, in a sentence; empty where it makes nothing so.

    Somebody may show an old page, on which a withdrawn certificate is genuine still, or one with the clock set back. A
    zone puts a list one day ahead.
    """
    if age(trust, today) > _OLD:
        return LIST_IS_OLD
    try:
        ahead = (date.fromisoformat(trust.date) - today).days
    except ValueError:
        return ""
    return CLOCK_IS_BEHIND if ahead > 1 else ""


def _day(day: date | None) -> str:
    return day.isoformat() if day else ""

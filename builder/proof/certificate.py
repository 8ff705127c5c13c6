"""What a certificate says, as data and as the signed bytes of a W3C Verifiable Credential 2.0.

Every member has one shape, and the shapes hold together: only a pass earns a certificate, a supervised check names
who supervised and how identity was checked, an observed practical names the day and the records. Bytes that say
anything more, less or else are none; so what a reader shows of a certificate it has checked.
Twin of the reading half of ``site_overrides/js/pure/verdict.js``: both take the same bytes.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, Any

from journeybook.marking import canonical
from journeybook.marking.kind import Json
from journeybook.proof.certificate_shape import FORMAT, day_of, mistake
from journeybook.proof.data_integrity import CONTEXT, sign
from journeybook.proof.did_key import did_of

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

SIZE_CAP = 16_384
"""Bytes. A certificate with long names is below a fifth of it."""


class NotACertificate(ValueError):  # noqa: N818 - it says what the bytes are not
    """Bytes or facts that are no certificate."""

    def __init__(self, detail: str) -> None:
        """Keep why: ``detail`` is a sentence for people."""
        self.detail = detail
        super().__init__(detail)


@dataclass(frozen=True, kw_only=True)
class Certificate:
    """What a certificate says. Texts are NFC, of at most 200 characters, without blanks around or control characters.

    Texts are not empty where the field does not say so.
    """

    id: str
    """``urn:uuid:`` and a lower-case UUID of version 4 (RFC 9562)."""
    issuer: str
    """The did:key whose signature makes it."""
    valid_from: str
    """RFC 3339 UTC stamp in whole seconds: when it was issued."""
    valid_until: str
    """The last second of the day on which training is due again."""
    name: str
    person: str
    """What tells this person from all others at the employer: a staff number."""
    employer: str
    workplace: str
    """May be empty."""
    equipment: str
    """The type of equipment trained for, in the course's words."""
    title: str
    """Of the course, in the language of the check."""
    course: str
    """Its id."""
    version: str
    digest: str
    """SHA-256 of the compiled course, 64 hexadecimal digits."""
    profile: str
    """Id of the jurisdiction's profile."""
    language: str
    """BCP 47 tag of the check's language."""
    marks: int
    """Thousandths, 0 to ``of``."""
    of: int
    """Thousandths: 1,000 for each question."""
    cut: int
    """Per cent of ``of`` that passes, 1 to 100; ``marks`` reach it."""
    must_pass: tuple[int, int]
    """Must-pass questions answered right, and asked: the same number."""
    check: str
    """``self-recorded`` (nobody confirmed who answered) or ``supervised``."""
    practical: str
    """``observed`` or ``not observed``."""
    identity: str
    """How it was checked who the person was; not empty exactly where the check was supervised."""
    trainer: str
    """May be empty."""
    assessor: str
    """Who supervised or observed; not empty exactly where somebody did."""
    trained: date | None
    """Day of training."""
    checked: date
    """Day on which the check was taken."""
    observed: date | None
    """Day of the last observation; exactly where the practical was observed."""
    retrain_by: date
    """The last day on which the certificate holds."""
    attempt: int
    """Which attempt passed, from 1, as the employer's records count."""
    fingerprint: str
    """Of the attempt."""
    observations: tuple[str, ...]
    """Fingerprints of the countersigned observations, at most 8; some exactly where the practical was observed."""
    example: bool
    """Made to try things out; worth nothing at work."""


def document_of(certificate: Certificate) -> dict[str, Json]:
    """Return the credential (VC Data Model 2.0, 4) without its proof."""
    subject: dict[str, Json] = {
        "format": FORMAT,
        "name": certificate.name,
        "person": certificate.person,
        "employer": certificate.employer,
        "workplace": certificate.workplace,
        "equipment": certificate.equipment,
        "title": certificate.title,
        "course": certificate.course,
        "version": certificate.version,
        "digest": certificate.digest,
        "profile": certificate.profile,
        "language": certificate.language,
        "marks": certificate.marks,
        "of": certificate.of,
        "cut": certificate.cut,
        "mustPass": list(certificate.must_pass),
        "check": certificate.check,
        "practical": certificate.practical,
        "identity": certificate.identity,
        "trainer": certificate.trainer,
        "assessor": certificate.assessor,
        "trained": _iso(certificate.trained),
        "checked": _iso(certificate.checked),
        "observed": _iso(certificate.observed),
        "retrainBy": _iso(certificate.retrain_by),
        "attempt": certificate.attempt,
        "fingerprint": certificate.fingerprint,
        "observations": list(certificate.observations),
        "example": certificate.example,
    }
    return {
        "@context": CONTEXT,
        "type": ["VerifiableCredential"],
        "id": certificate.id,
        "issuer": certificate.issuer,
        "validFrom": certificate.valid_from,
        "validUntil": certificate.valid_until,
        "credentialSubject": subject,
    }


def write(certificate: Certificate, private_key: Ed25519PrivateKey) -> bytes:
    """Return the canonical bytes of the certificate, signed.

    Raises ValueError where ``private_key`` is not the issuer's, and NotACertificate where the facts are out of shape.
    """
    if did_of(private_key.public_key().public_bytes_raw()) != certificate.issuer:
        raise ValueError("A certificate is signed by its issuer.")
    document = document_of(certificate)
    try:
        _demand({**document, "proof": {}})
        data = canonical.write(sign(document, private_key))
    except canonical.NotCanonical as error:
        raise NotACertificate(error.detail) from error
    # Only what reads again as itself leaves: nobody notices a certificate that is none before it is shown at a gate.
    if read(data) != certificate:
        raise NotACertificate("The certificate would read as another one.")
    return data


def read(data: bytes) -> Certificate:
    """Return the certificate that ``data`` holds in canonical form; its signature is not checked.

    Raises NotACertificate.
    """
    return of_document(parsed(data))


def parsed(data: bytes) -> dict[str, Any]:
    """Return the members of a certificate's canonical bytes, its proof too, each of its shape.

    The proof is an object; whether it holds is for data_integrity. Raises NotACertificate.
    """
    if len(data) > SIZE_CAP:
        raise NotACertificate(f"It is larger than {SIZE_CAP} bytes.")
    try:
        document: Any = canonical.read(data)
    except canonical.NotCanonical as error:
        raise NotACertificate(error.detail) from error
    _demand(document)
    found: dict[str, Any] = document
    return found


def of_document(document: Mapping[str, Any]) -> Certificate:
    """Return the certificate of members that ``parsed`` gave."""
    subject = document["credentialSubject"]
    right, asked = subject["mustPass"]
    retrain_by = day_of(subject["retrainBy"])
    checked = day_of(subject["checked"])
    if retrain_by is None or checked is None:
        raise ValueError("Only members that were parsed make a certificate.")
    return Certificate(
        id=document["id"],
        issuer=document["issuer"],
        valid_from=document["validFrom"],
        valid_until=document["validUntil"],
        name=subject["name"],
        person=subject["person"],
        employer=subject["employer"],
        workplace=subject["workplace"],
        equipment=subject["equipment"],
        title=subject["title"],
        course=subject["course"],
        version=subject["version"],
        digest=subject["digest"],
        profile=subject["profile"],
        language=subject["language"],
        marks=subject["marks"],
        of=subject["of"],
        cut=subject["cut"],
        must_pass=(right, asked),
        check=subject["check"],
        practical=subject["practical"],
        identity=subject["identity"],
        trainer=subject["trainer"],
        assessor=subject["assessor"],
        trained=day_of(subject["trained"]),
        checked=checked,
        observed=day_of(subject["observed"]),
        retrain_by=retrain_by,
        attempt=subject["attempt"],
        fingerprint=subject["fingerprint"],
        observations=tuple(subject["observations"]),
        example=subject["example"],
    )


def _demand(document: object) -> None:
    detail = mistake(document)
    if detail:
        raise NotACertificate(detail)


def _iso(day: date | None) -> str:
    return "" if day is None else day.isoformat()

"""What the printed certificate says, in plain words; which of it may stand together."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, kw_only=True)
class CertificateSheet:
    """The words of one certificate. Texts are plain, without markup; those of the course in the sheet's language.

    Raises ValueError where a stamp would be struck with no assessor behind it: that is a mistake of the program.
    """

    id: str
    """``urn:uuid:`` and a UUID."""
    tongue: str
    """BCP 47 tag of the language that the sheet is printed in: that of the check."""
    language: str
    """The same in words: English."""
    issuer: str
    """Who issues it, by name."""
    issuer_place: str = ""
    key: str
    """The fingerprint of the issuer's key, in the groups in which people compare it."""
    issued: date
    name: str
    person: str
    """The number that tells this person from all others at the employer."""
    employer: str
    workplace: str = ""
    equipment: str
    """The type of equipment trained for."""
    title: str
    """Of the course."""
    version: str
    """Of the course."""
    digest: str
    """SHA-256 of the compiled course, 64 hexadecimal digits."""
    profile: str
    """Whose rules the course was built for, in words."""
    outcomes: tuple[str, ...]
    """What the course and its check cover, one sentence each; about 20 at most fit the paper."""
    marks: int
    """Thousandths, 0 to ``of``."""
    of: int
    """Thousandths: 1,000 for each question."""
    cut: int
    """Per cent of ``of`` that passes."""
    must_pass: tuple[int, int]
    """Must-pass questions answered right, and asked."""
    attempt: int
    """Which attempt passed, from 1, as the employer's records count."""
    supervised: bool
    """Whether somebody confirmed who took the check; otherwise it is self-recorded."""
    identity: str = ""
    """How it was checked who the person was; not empty exactly where the check was supervised."""
    observed: date | None = None
    """Day on which an assessor last saw the practical done; None where nobody did."""
    practicals: tuple[str, ...] = ()
    """Titles of the practicals: those seen where some were, else those that the course has."""
    trainer: str = ""
    assessor: str = ""
    """Who supervised or observed; not empty exactly where somebody did."""
    observer: str = ""
    """Who observed, where that was somebody else than who supervised; empty where one name stands for both."""
    trained: date | None = None
    """Day of training."""
    checked: date
    """Day of the check."""
    retrain_by: date
    """The last day on which the certificate holds."""
    fingerprint: str
    """Of the attempt, ``AAAA-BBBB-CCCC-DDDD``."""
    observations: tuple[str, ...] = ()
    """Fingerprints of the countersigned observations."""
    cautions: tuple[str, ...]
    """The course's cautions."""
    contact: str = ""
    """Whom to ask, and where they are found; empty where the course names nobody."""
    limits: tuple[str, ...]
    """What a certificate of the course does not prove, a few words each."""
    example: bool
    """Made to try things out: the strip says that it is not valid for work."""
    site: str = ""
    """Address of the site whose checking page reads the certificate; empty where it has none."""

    def __post_init__(self) -> None:
        """Hold what stands together together."""
        if bool(self.assessor) != (self.supervised or self.observed is not None):
            raise ValueError("An assessor stands exactly where somebody supervised or observed.")
        if self.observer and not (self.supervised and self.observed):
            raise ValueError("An observer stands apart only where somebody else supervised.")
        if bool(self.identity) != self.supervised:
            raise ValueError("How identity was checked stands exactly where the check was supervised.")
        if bool(self.observations) != (self.observed is not None):
            raise ValueError("Fingerprints of observations stand exactly where the practical was observed.")

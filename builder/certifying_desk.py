"""The desk at which certificates are issued: what is the same for a whole class, and what became of each person."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import uuid4

from journeybook.clock import latest_day
from journeybook.proof.certificate import Certificate
from journeybook.sittings.class_file import composed
from journeybook.sittings.earned import Earned, Shortfall, earned
from journeybook.sittings.inbox import Course
from journeybook.sittings.sitting import Place, Sitting

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    from journeybook.proof.key_plate import KeyPlate
    from journeybook.proof.trust_list import TrustList, Withdrawal

ISSUED, ALREADY, NOT_ISSUED = "issued", "already issued", "not issued"
OUTCOMES = (ISSUED, ALREADY, NOT_ISSUED)


@dataclass(frozen=True, kw_only=True)
class Line:
    """What became of one person."""

    ticket: str
    person: str
    name: str
    outcome: str
    """One of ``OUTCOMES``."""
    passed: bool | None = None
    """None where there is nothing that can be marked."""
    file: str = ""
    id: str = ""
    """Of the certificate."""
    certificate: Certificate | None = None
    reasons: tuple[Shortfall, ...] = ()
    """Why there is none."""
    notes: tuple[str, ...] = ()
    """What is said beside it, in sentences."""
    is_back: bool = False
    """Whether there is an attempt."""

    @property
    def needs_somebody(self) -> bool:
        """Whether somebody has to look: whoever passed, or cannot be marked, has none."""
        return self.outcome == NOT_ISSUED and self.is_back and self.passed is not False


@dataclass(frozen=True, kw_only=True)
class Desk:
    """Everything that issuing takes and that is the same for a whole class."""

    course: Course
    """A released one."""
    plate: KeyPlate
    """Of the key that signs."""
    private: Ed25519PrivateKey | None
    """That key; None where nothing is to be signed, so that nobody is asked for its passphrase."""
    trust: TrustList | None
    folder: Path
    now: datetime
    """When the certificates are issued."""
    size: str = "a4"
    """Of the paper."""
    record_only: bool = False
    """No papers, only signed records."""
    employer: str = ""
    """Whose employee the person is; the course's issuer unless given."""
    person: str = ""
    """The number of a single attempt's person, where their card holds another id."""
    self_recorded: bool = False
    """Whether an attempt is let through that nobody has vouched for."""
    new_id: Callable[[], str] = field(default=lambda: f"urn:uuid:{uuid4()}")

    @property
    def today(self) -> date:
        """The day of issue."""
        return self.now.astimezone(UTC).date()

    def person_of(self, place: Place) -> str:
        """What tells somebody from all others at the employer."""
        return composed(self.person or place.id)

    def withdrawal(self, certificate: Certificate) -> Withdrawal | None:
        """When and why a certificate, or the key that signed it, was withdrawn; None where neither was."""
        if self.trust is None:
            return None
        lost = (key.withdrawn for key in self.trust.keys_of(certificate.issuer) if key.withdrawn)
        return self.trust.withdrawal_of(certificate.id) or next(lost, None)

    def knows(self, certificate: Certificate) -> bool:
        """Whether this signer, or another of the list, has signed it."""
        return self.signer_of(certificate) is not None

    def signer_of(self, certificate: Certificate) -> tuple[str, str] | None:
        """Holder and role of the key that signed a certificate; None where it is nobody's that is known here."""
        if certificate.issuer == self.plate.did:
            return self.plate.holder, self.plate.role
        keys = () if self.trust is None else self.trust.keys_of(certificate.issuer)
        return next(((key.holder, key.role) for key in keys), None)

    def earned(self, sitting: Sitting, place: Place) -> Earned:
        """What somebody has earned."""
        return earned(
            sitting, place, self.course, today=self.today, latest=latest_day(self.now),
            self_recorded=self.self_recorded,
        )  # fmt: skip

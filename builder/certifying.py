"""Issuing certificates: read what somebody has earned, sign it, set it on paper, write both files, note it.

The order keeps a run that breaks off anywhere from losing or doubling a certificate: first the signed record is on the
disk, then its paper, then the note in the sitting, all under the sitting's lock. The next run finds a record that is
not noted yet, and notes that instead of signing another.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime
from pathlib import Path
from time import monotonic
from typing import TYPE_CHECKING
from uuid import uuid4

from journeybook.certificate_files import PAPER, RECORD, Held, free_stem, held, put, stem_of
from journeybook.certificate_words import fitted, in_language, sheet_of
from journeybook.clock import latest_day
from journeybook.paper.certificate import certificate_pdf
from journeybook.paper.code_picture import NoCodePicture
from journeybook.paper.press import NotSet
from journeybook.proof.certificate import Certificate, NotACertificate, write
from journeybook.proof.certificate_code import to_code
from journeybook.signing import Signer, is_demo
from journeybook.sittings import sitting_file
from journeybook.sittings.class_file import composed
from journeybook.sittings.earned import Claim, Earned, Shortfall, earned
from journeybook.sittings.inbox import Course
from journeybook.sittings.sitting import CertificateIssued, Place, Sitting, with_certificate

if TYPE_CHECKING:
    from journeybook.proof.trust_list import TrustList, Withdrawal


class CodeTooLong(ValueError):  # noqa: N818 - what is wrong with it
    """The code on the paper could not be scanned; the text says why."""


ISSUED, ALREADY, NOT_ISSUED = "issued", "already issued", "not issued"
OUTCOMES = (ISSUED, ALREADY, NOT_ISSUED)
_HOLD = 2.0
"""Seconds for which the sitting's lock is held at one go: reading and writing a large sitting for each single person
would cost more than signing, and whoever else is at the sitting waits ten.
"""


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
    signer: Signer | None
    """None while it is only looked at who has earned what."""
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
        lost = (key.withdrawn for key in self.trust.keys if key.did == certificate.issuer and key.withdrawn)
        return self.trust.withdrawal_of(certificate.id) or next(lost, None)

    def knows(self, certificate: Certificate) -> bool:
        """Whether this signer, or another of the list, has signed it."""
        own = self.signer is not None and certificate.issuer == self.signer.did
        return own or (self.trust is not None and _listed(self.trust, certificate.issuer) is not None)

    def earned(self, sitting: Sitting, place: Place) -> Earned:
        """What somebody has earned."""
        return earned(
            sitting, place, self.course, today=self.today, latest=latest_day(self.now),
            self_recorded=self.self_recorded,
        )  # fmt: skip


def certify_sitting(
    path: Path, desk: Desk, tickets: Collection[str] | None = None, again: Collection[str] = ()
) -> Iterator[Line]:
    """Issue to everybody of a sitting, or to those of ``tickets``, and yield what became of each.

    ``again`` are tickets whose withdrawn certificate is issued anew. Raises SittingRefused, OSError, and what setting a
    paper raises; whoever was issued one until then keeps it.
    """
    waiting = [
        place.ticket for place in sitting_file.read(path).people if tickets is None or place.ticket in tickets
    ]
    while waiting:
        some = _Some(desk=desk, waiting=waiting, again=again)
        sitting_file.update(path, some.step)
        yield from some.told
        if some.broken is not None:
            raise some.broken


@dataclass(kw_only=True)
class _Some:
    """As many people as are served while the sitting's lock is held once."""

    desk: Desk
    waiting: list[str]
    """Their tickets; who is served is taken off."""
    again: Collection[str]
    told: list[Line] = field(default_factory=list)
    broken: Exception | None = None
    """What broke the work off. It is raised once what was done until then is noted."""

    def step(self, now: Sitting) -> Sitting:
        until = monotonic() + _HOLD
        while self.waiting and (not self.told or monotonic() < until):
            ticket = self.waiting[0]
            try:
                now, line = _one(now, ticket, self.desk, again=ticket in self.again)
            except Exception as error:
                self.broken = error
                break
            del self.waiting[0]
            self.told.append(line)
        return now


def _one(now: Sitting, ticket: str, desk: Desk, *, again: bool) -> tuple[Sitting, Line]:
    """The sitting after one person, with the note of their certificate where there is a new one."""
    here = now.place(ticket)
    assert here is not None, "a place is never taken out of a sitting"
    line = certified(now, here, desk, again=again)
    known = here.certificate is not None and here.certificate.id == line.id
    if line.outcome == NOT_ISSUED or known:
        return now, line
    return with_certificate(now, ticket, _noted(line)), line


def certified(sitting: Sitting, place: Place, desk: Desk, *, again: bool = False) -> Line:
    """Issue to one person, if they have earned it and have none yet; the note is for the caller."""
    before = place.certificate
    line = Line(
        ticket=place.ticket,
        person=desk.person_of(place),
        name=place.name,
        outcome=NOT_ISSUED,
        is_back=place.attempt is not None,
    )
    stem = stem_of(composed(place.name), desk.person_of(place), sitting.course)
    if before is not None and not again:
        return _held_already(line, before, stem, desk)
    if before is not None and not _is_withdrawn(desk, before, stem):
        why = f"The certificate {before.id} was issued and is not withdrawn, so no other takes its place."
        mend = "Withdraw it first with `journeybook trust withdraw`; then run this again."
        return replace(line, passed=True, reasons=(Shortfall(why=why, mend=mend),))
    there = held(desk.folder, stem, lambda found: _is_of(found, sitting, place, desk))
    if there is not None:
        notes = ("A run that broke off had signed it; it is noted now.",) if sitting.people[1:] else ()
        return _with_files(replace(line, outcome=ALREADY, notes=notes), there, desk)
    result = desk.earned(sitting, place)
    line = replace(line, passed=result.passed, reasons=result.reasons, notes=result.notes)
    if result.claim is None:
        return line
    return _issued(line, result.claim, sitting, place, stem, desk)


def _issued(line: Line, claim: Claim, sitting: Sitting, place: Place, stem: str, desk: Desk) -> Line:
    assert desk.signer is not None, "only looking asks `Desk.earned`"
    certificate = _certificate(claim, sitting, place, desk)
    try:
        record = write(certificate, desk.signer.private)
    except NotACertificate as error:
        return replace(line, reasons=(Shortfall(
            why=f"What is known of this person does not fit a certificate. {error.detail}",
            mend="Correct that text where it was written, and hold the check again under the right one.",
        ),))  # fmt: skip
    stem = free_stem(desk.folder, stem)
    there = Held(certificate=certificate, record=record, stem=stem, has_record=False, has_paper=False)
    # The paper is set before anything is written: what cannot be printed is not signed and left lying about either.
    try:
        paper = None if desk.record_only else paper_of(there, desk)
    except (NotSet, NoCodePicture, CodeTooLong) as error:
        return replace(line, reasons=(Shortfall(
            why=str(error), mend="Shorten what is too long, or issue a record alone with --record-only."
        ),))  # fmt: skip
    return _with_files(replace(line, outcome=ISSUED), there, desk, paper)


def _certificate(claim: Claim, sitting: Sitting, place: Place, desk: Desk) -> Certificate:
    assert desk.signer is not None, "asked by ``_issued`` alone"
    public = desk.course.content["public"]
    texts = in_language(public["texts"], sitting.language, desk.course.content)
    return Certificate(
        id=desk.new_id(),
        issuer=desk.signer.did,
        valid_from=desk.now.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ"),
        valid_until=f"{claim.retrain_by.isoformat()}T23:59:59Z",
        name=composed(place.name),
        person=desk.person_of(place),
        employer=composed(desk.employer or public["issuer"]["name"]),
        workplace=composed(place.workplace),
        equipment=fitted(texts["equipment"]),
        title=fitted(texts["title"]),
        course=sitting.course,
        version=sitting.version,
        digest=sitting.digest,
        profile=sitting.profile,
        language=sitting.language,
        marks=claim.marks,
        of=claim.of,
        cut=claim.cut,
        must_pass=claim.must_pass,
        check=claim.check,
        practical=claim.practical,
        identity=composed(claim.identity),
        trainer=composed(sitting.trainer),
        assessor=composed(claim.assessor),
        trained=sitting.trained,
        checked=claim.checked,
        observed=claim.observed,
        retrain_by=claim.retrain_by,
        attempt=place.attempt_number,
        fingerprint=claim.fingerprint,
        observations=claim.observations,
        example=is_demo(desk.signer.plate, desk.trust),
    )


def _with_files(line: Line, there: Held, desk: Desk, paper: bytes | None = None) -> Line:
    """The line of a certificate whose files are both there now, the record first."""
    if not there.has_record:
        put(desk.folder / f"{there.stem}{RECORD}", there.record)
    if not there.has_paper and not desk.record_only:
        put(desk.folder / f"{there.stem}{PAPER}", paper or paper_of(there, desk))
        there = replace(there, has_paper=True)
    return replace(
        line, passed=True, file=there.file, id=there.certificate.id, certificate=there.certificate, reasons=()
    )


def paper_of(there: Held, desk: Desk) -> bytes:
    """Return the PDF of a certificate: the same bytes whenever it is set.

    Raises NoPress without the typesetter, NotSet, NoCodePicture and CodeTooLong for what cannot be set.
    """
    holder, role = _signed_by(there.certificate, desk)
    try:
        code = to_code(there.record)
    except ValueError as error:
        raise CodeTooLong(str(error)) from error
    return certificate_pdf(
        sheet_of(there.certificate, desk.course.content, holder=holder, role=role),
        there.record,
        code,
        datetime.fromisoformat(there.certificate.valid_from),
        desk.size,
    )


def _signed_by(certificate: Certificate, desk: Desk) -> tuple[str, str]:
    """Holder and role of the key that signed a certificate."""
    if desk.signer is not None and desk.signer.did == certificate.issuer:
        return desk.signer.plate.holder, desk.signer.plate.role
    listed = None if desk.trust is None else _listed(desk.trust, certificate.issuer)
    assert listed is not None, "what was found is of this signer or of one on the list"
    return listed


def _listed(trust: TrustList, did: str) -> tuple[str, str] | None:
    return next(((key.holder, key.role) for key in trust.keys if key.did == did), None)


def _is_of(found: Certificate, sitting: Sitting, place: Place, desk: Desk) -> bool:
    """Whether a certificate is the one that this place would be given: by whose word, for what, and still good."""
    if place.attempt is None or desk.withdrawal(found) is not None:
        return False
    return (
        desk.knows(found)
        and (found.fingerprint, found.digest) == (place.attempt.fingerprint, sitting.digest)
        and (found.name, found.person) == (composed(place.name), desk.person_of(place))
        and (place.certificate is None or found.id != place.certificate.id)
    )


def _held_already(line: Line, before: CertificateIssued, stem: str, desk: Desk) -> Line:
    """The line of somebody whose certificate is noted; a paper that is missing beside its record is set again."""
    line = replace(line, outcome=ALREADY, passed=True, file=before.file, id=before.id)
    there = held(desk.folder, stem, lambda found: found.id == before.id and desk.knows(found))
    gone = None if desk.trust is None else desk.trust.withdrawal_of(before.id)
    if gone is None and there is not None:
        gone = desk.withdrawal(there.certificate)
    if gone is not None:
        word = f"It was withdrawn on {gone.on}. To issue another: --again {line.ticket}"
        return replace(line, notes=(word,))
    if there is None:
        return replace(line, notes=(f"It does not lie in {desk.folder}.",))
    lacking = not there.has_paper and not desk.record_only
    notes = ("Its paper was missing and was set again from its record.",) if lacking else ()
    return _with_files(replace(line, notes=notes), there, desk)


def _is_withdrawn(desk: Desk, before: CertificateIssued, stem: str) -> bool:
    """Whether a certificate counts no more: by its own id, or with the key that signed it."""
    if desk.trust is None:
        return False
    if desk.trust.withdrawal_of(before.id) is not None:
        return True
    there = held(desk.folder, stem, lambda found: found.id == before.id)
    return there is not None and desk.withdrawal(there.certificate) is not None


def _noted(line: Line) -> CertificateIssued:
    assert line.certificate is not None, "asked only where there is one"
    return CertificateIssued(id=line.id, issued=line.certificate.valid_from, file=line.file)

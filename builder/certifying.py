"""Issuing certificates: read what somebody has earned, sign it, set it on paper, write both files, note it.

The order keeps a run that breaks off anywhere from losing or doubling a certificate: first the signed record is on the
disk, then its paper, then the note in the sitting, all under the sitting's lock. The next run finds a record that is
not noted yet, and notes that instead of signing another.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from pathlib import Path
from time import monotonic, sleep
from typing import TYPE_CHECKING

from journeybook.certificate_files import PAPER, RECORD, Held, alone_in, free_stem, held, stem_of
from journeybook.certificate_words import fitted, in_language, sheet_of
from journeybook.certifying_desk import ALREADY, ISSUED, NOT_ISSUED, Desk, Line
from journeybook.paper.certificate import certificate_pdf
from journeybook.paper.code_picture import NoCodePicture
from journeybook.paper.press import NotSet
from journeybook.proof.certificate import Certificate, NotACertificate, write
from journeybook.proof.certificate_code import to_code
from journeybook.proof.certificate_shape import LONGEST_TEXT
from journeybook.proof.private_file import put
from journeybook.signing import is_demo
from journeybook.sittings import sitting_file
from journeybook.sittings.class_file import composed
from journeybook.sittings.earned import Claim, Shortfall
from journeybook.sittings.sitting import CertificateIssued, Place, Sitting, with_certificate

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey


class CodeTooLong(ValueError):  # noqa: N818 - what is wrong with it
    """The code on the paper could not be scanned; the text says why."""


_UNPRINTABLE = (NotSet, NoCodePicture, CodeTooLong)
_MEMBER = re.compile("“([A-Za-z]+)”")
_WORDS = {
    "name": "name", "person": "number", "employer": "name of the employer", "workplace": "workplace",
    "identity": "way in which identity was checked", "trainer": "name of the trainer",
    "assessor": "name of the assessor",
}  # fmt: skip
"""What people call the members that somebody typed."""
_HOLD = 2.0
"""Seconds for which the sitting's lock is held at one go: reading and writing a large sitting for each single person
would cost more than signing, and whoever else is at the sitting waits ten.
"""

_TURN = 0.2
"""Seconds for which the lock is left alone between two holds: whoever waits for it looks every so often only."""


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
        if waiting:
            sleep(_TURN)


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
    """Issue to one person, if they have earned it and have none yet; the note is for the caller.

    Raises SittingRefused where somebody else is at the folder for too long, and OSError.
    """
    with alone_in(desk.folder):
        return _certified(sitting, place, desk, again=again)


def _certified(sitting: Sitting, place: Place, desk: Desk, *, again: bool) -> Line:
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
        return _held_already(line, before, stem, sitting, desk)
    if before is not None and not _is_withdrawn(desk, before, stem):
        why = f"The certificate {before.id} was issued and is not withdrawn, so no other takes its place."
        mend = "Withdraw it first with `journeybook trust withdraw`; then run this again."
        return replace(line, passed=True, reasons=(Shortfall(why=why, mend=mend),))
    there = held(desk.folder, stem, lambda found: _is_of(found, sitting, place, desk))
    if there is not None:
        # A single attempt has no sitting to be noted in, and may have been vouched for since.
        broken = ("A run that broke off had signed it; it is noted now.",)
        notes = broken if sitting.id else _earned_since(there.certificate, place.ticket, sitting, desk)
        return _with_files(replace(line, outcome=ALREADY, notes=notes), there, desk)
    result = desk.earned(sitting, place)
    line = replace(line, passed=result.passed, reasons=result.reasons, notes=result.notes)
    if result.claim is None:
        return line
    if desk.private is None:
        # Nobody had earned one when it was asked whether a passphrase is needed.
        return replace(line, reasons=(Shortfall(
            why="What is needed for a certificate came in only while this ran.", mend="Run this again."
        ),))  # fmt: skip
    return _issued(line, result.claim, sitting, place, stem, desk, desk.private)


def _issued(
    line: Line,
    claim: Claim,
    sitting: Sitting,
    place: Place,
    stem: str,
    desk: Desk,
    private: Ed25519PrivateKey,
) -> Line:
    certificate = _certificate(claim, sitting, place, desk)
    try:
        record = write(certificate, private)
    except NotACertificate as error:
        return replace(line, reasons=(_does_not_fit(error),))
    stem = free_stem(desk.folder, stem)
    there = Held(certificate=certificate, record=record, stem=stem, has_record=False, has_paper=False)
    # The paper is set before anything is written: what cannot be printed is not signed and left lying about either.
    try:
        paper = None if desk.record_only else paper_of(there, desk)
    except _UNPRINTABLE as error:
        return replace(line, reasons=(Shortfall(
            why=str(error), mend="Shorten what is too long, or issue a record alone with --record-only."
        ),))  # fmt: skip
    return _with_files(replace(line, outcome=ISSUED), there, desk, paper)


def _does_not_fit(error: NotACertificate) -> Shortfall:
    named = _MEMBER.search(error.detail)
    word = _WORDS.get(named[1]) if named else None
    return Shortfall(
        why=f"What is known of this person does not fit a certificate. {error.detail}"
        if word is None
        else f"The {word} does not fit a certificate: it is empty, or has more than {LONGEST_TEXT} characters, or one "
        "that cannot be seen, such as one that turns the writing around.",
        mend="Correct it where it was written, and hold the check again under the right one.",
    )


def _certificate(claim: Claim, sitting: Sitting, place: Place, desk: Desk) -> Certificate:
    public = desk.course.content["public"]
    texts = in_language(public["texts"], sitting.language, desk.course.content)
    return Certificate(
        id=desk.new_id(),
        issuer=desk.plate.did,
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
        example=is_demo(desk.plate, desk.trust),
    )


def _with_files(line: Line, there: Held, desk: Desk, paper: bytes | None = None) -> Line:
    """The line of a certificate whose files are both there now, the record first."""
    if not there.has_record:
        put(desk.folder / f"{there.stem}{RECORD}", there.record)
    notes = line.notes
    if not there.has_paper and not desk.record_only:
        try:
            put(desk.folder / f"{there.stem}{PAPER}", paper or paper_of(there, desk))
            there = replace(there, has_paper=True)
        except _UNPRINTABLE as error:
            notes = (*notes, f"It has no paper. {error}")
    return replace(
        line,
        passed=True,
        file=there.file,
        id=there.certificate.id,
        certificate=there.certificate,
        notes=notes,
    )


def paper_of(there: Held, desk: Desk) -> bytes:
    """Return the PDF of a certificate: the same bytes whenever it is set.

    Raises NoPress without the typesetter, NotSet, NoCodePicture and CodeTooLong for what cannot be set.
    """
    signed_by = desk.signer_of(there.certificate)
    assert signed_by is not None, "what was found is of this signer or of one on the list"
    holder, role = signed_by
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


def _is_of(found: Certificate, sitting: Sitting, place: Place, desk: Desk) -> bool:
    """Whether a certificate is the one that this place would be given: by whose word, for what, and still good."""
    if place.attempt is None or desk.withdrawal(found) is not None:
        return False
    return (
        desk.knows(found)
        # What was signed to try things out is not what somebody has earned.
        and not (found.example and not is_demo(desk.plate, desk.trust))
        and (found.fingerprint, found.digest) == (place.attempt.fingerprint, sitting.digest)
        and (found.name, found.person) == (composed(place.name), desk.person_of(place))
    )


def _held_already(line: Line, before: CertificateIssued, stem: str, sitting: Sitting, desk: Desk) -> Line:
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
        cure = "Name the folder that holds it with --into; is it lost, withdraw it first."
        return replace(line, notes=(f"It does not lie in {desk.folder}. {cure}",))
    more = _earned_since(there.certificate, line.ticket, sitting, desk)
    if there.certificate.example and not is_demo(desk.plate, desk.trust):
        why = "It is an example, signed to try things out, and worth nothing at work."
        more = (f"{why} For a real one, {_another(there.certificate, line.ticket, sitting)}",)
    done = _with_files(replace(line, notes=more), there, desk)
    if done.file != there.file:
        done = replace(done, notes=("Its paper was missing and was set again from its record.", *done.notes))
    return done


def _earned_since(certificate: Certificate, ticket: str, sitting: Sitting, desk: Desk) -> tuple[str, ...]:
    """What a certificate does not say yet, because it came in after it was issued."""
    place = sitting.place(ticket)
    claim = None if place is None else desk.earned(sitting, place).claim
    since = () if claim is None else tuple(
        told for told, now, then in (
            ("the check was vouched for", claim.check == "supervised", certificate.check == "supervised"),
            ("the practical was observed", claim.practical == "observed", certificate.practical == "observed"),
        ) if now and not then
    )  # fmt: skip
    if not since:
        return ()
    return (
        f"Since then {' and '.join(since)}. For a certificate that says so, {_another(certificate, ticket, sitting)}",
    )


def _another(certificate: Certificate, ticket: str, sitting: Sitting) -> str:
    then = f"--again {ticket}" if sitting.id else "run this again"
    return f"withdraw this one with `journeybook trust withdraw … {certificate.id} --reason replaced`, then: {then}"


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

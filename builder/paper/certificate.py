"""Prints the signed certificate: a finished route card on one page, with its record inside the file and in a code.

It says two strengths apart (who answered the check, who saw the practical) and, in large type, what it does not
prove. Where nobody saw the practical, its very title says *Knowledge check only*. Ink is for what was recorded
without anybody's word; a stamp stands only where an assessor's name is behind it.
"""

from __future__ import annotations

from datetime import datetime
from gettext import NullTranslations
from typing import Any

from journeybook.marking.kind import in_questions
from journeybook.pages.filters import day
from journeybook.pages.words_catalogue import load_catalogue
from journeybook.paper.certificate_sheet import CertificateSheet
from journeybook.paper.code_picture import code_picture
from journeybook.paper.press import SIZES, Attachment, NotSet, press

__all__ = ["CertificateSheet", "certificate_pdf"]

MODULE = 0.42
"""Millimetres of a side of a square of the code, at least; a camera of a phone needs 0.4."""
SIDE = 40.0
"""Millimetres of a side of a small code: its squares grow, since the words beside it need the room in any case."""
RECORD = "record.json"
MEDIA_TYPE = "application/vc"
"""Of a credential (VC Data Model 2.0, C.2)."""
_TOO_FULL = "the certificate is too full"
"""What the template says where even its smallest type does not fit."""


def certificate_pdf(
    sheet: CertificateSheet, record: bytes, code: str, made: datetime, size: str = SIZES[0]
) -> bytes:
    """Return the PDF of a certificate, one page of ``size``, dated ``made``.

    ``record`` is the signed certificate, which is attached, and ``code`` the same as the text of a QR code. Raises
    NoPress without the typesetter, NotSet where the words do not fit one page, NoCodePicture where the code is too
    long, ValueError for another size of paper.
    """
    if size not in SIZES:
        raise ValueError(f"A certificate is printed on {' or '.join(SIZES)}.")
    words, _ = load_catalogue(sheet.tongue)
    picture = code_picture(code)
    data = sheet_data(sheet, words)
    data |= {
        "paper": size,
        "code": {"side": round(max(picture.modules * MODULE, SIDE), 2), "says": data["code-says"]},
    }
    try:
        return press(
            "certificate",
            data,
            made=made,
            pictures={"code.svg": picture.svg},
            attachment=Attachment(
                name=RECORD, data=record, kind=MEDIA_TYPE, says=words.gettext("The signed record")
            ),
        )
    except NotSet as error:
        if _TOO_FULL not in str(error):
            raise
        raise NotSet(
            f"The certificate of {sheet.name} cannot be set on one page: its texts, and the outcomes, cautions and "
            "limits of the course, are too long together. Shorten the longest."
        ) from error


def sheet_data(sheet: CertificateSheet, words: NullTranslations) -> dict[str, Any]:
    """Return every word of the sheet, in the order in which the template sets them."""
    say = words.gettext
    seen = sheet.observed is not None
    title = say("Training certificate") if seen else say("Knowledge check only")
    return {
        "language": sheet.tongue,
        "document": f"{title}: {sheet.name}, {sheet.title}",
        "title": title,
        "subtitle": say("Knowledge check and practical") if seen else say("The practical was not observed"),
        "complete": seen,
        "issuer": {"label": say("Issuer"), "name": sheet.issuer, "place": sheet.issuer_place},
        "issued": {"label": say("Issued"), "value": day(sheet.issued, words)},
        "hazard": say("Example unit, not valid for work") if sheet.example else "",
        "holder": _holder(sheet, words),
        "retrain": {
            "label": say("Retrain by"),
            "value": day(sheet.retrain_by, words),
            "sooner": say(
                "Sooner if the work or the equipment changes, or if use shows gaps in what was learnt."
            ),
        },
        "course": _course(sheet, words),
        "operations": {
            "head": [say("Op"), say("Work"), say("Ink or stamp")],
            "rows": [_training(sheet, words), _check(sheet, words), _practical(sheet, words)],
        },
        "outcomes": {
            "label": say("Outcomes of the course") if seen else say("Outcomes, checked by questions only"),
            "items": list(sheet.outcomes),
        },
        "limits": {"label": say("It does not prove"), "items": [*_not_shown(sheet, words), *sheet.limits]},
        "cautions": {"label": say("Before anything else"), "items": _cautions(sheet, words)},
        "signatures": {"label": say("Signatures in ink"), "lines": _signatures(sheet, words)},
        "checking": _checking(sheet, words),
        "code-says": say("Code that holds the signed record of this certificate"),
        "unshown": say(
            "A letter that reads as � is not in the type of this paper. The signed record has it."
        ),
    }


def _holder(sheet: CertificateSheet, words: NullTranslations) -> dict[str, Any]:
    say = words.gettext
    facts = [
        (say("Number"), sheet.person),
        (say("Employer"), sheet.employer),
        (say("Workplace"), sheet.workplace),
    ]
    return {"label": say("Name"), "name": sheet.name, "facts": [list(fact) for fact in facts if fact[1]]}


def _course(sheet: CertificateSheet, words: NullTranslations) -> dict[str, Any]:
    say = words.gettext
    return {
        "label": say("Course"),
        "title": sheet.title,
        "equipment": [say("Equipment type"), sheet.equipment],
        "facts": [
            [say("Version"), sheet.version],
            [say("Rules of"), sheet.profile],
            [say("Language"), sheet.language],
        ],
    }


def _training(sheet: CertificateSheet, words: NullTranslations) -> dict[str, Any]:
    say = words.gettext
    if sheet.trained is None:
        strength = say("The day is not recorded.")
        mark = _empty(say("Not recorded"))
    else:
        strength = say("Recorded by the employer.")
        mark = _ink(say("Trained"), day(sheet.trained, words))
    lines = [say("Trainer: {name}.").format(name=sheet.trainer)] if sheet.trainer else []
    return {"work": say("Training"), "strength": strength, "lines": lines, "prints": [], "mark": mark}


def _check(sheet: CertificateSheet, words: NullTranslations) -> dict[str, Any]:
    say = words.gettext
    when = day(sheet.checked, words)
    right, asked = sheet.must_pass
    lines = [
        say("Passed: {marks} of {of} marks. The cut is {cut}, which is {percent}.").format(
            marks=in_questions(sheet.marks),
            of=in_questions(sheet.of),
            cut=in_questions(-(-sheet.cut * sheet.of // 100)),
            percent=f"{sheet.cut}\u00a0%",
        ),
        say("Must-pass questions: {right} of {total} right.").format(right=right, total=asked),
        say("Attempt {number}.").format(number=sheet.attempt),
    ]
    if sheet.supervised:
        strength = say("Supervised: {name} confirmed who answered. Identity: {how}.").format(
            name=sheet.assessor, how=sheet.identity.rstrip(".")
        )
        mark = _stamp(say("Supervised"), sheet.assessor, when)
    else:
        strength = say("Self-recorded: nobody confirmed who answered.")
        mark = _ink(say("Passed"), when)
    return {
        "work": say("Knowledge check"),
        "strength": strength,
        "lines": lines,
        "prints": [say("Fingerprint of the attempt"), [sheet.fingerprint]],
        "mark": mark,
    }


def _practical(sheet: CertificateSheet, words: NullTranslations) -> dict[str, Any]:
    say = words.gettext
    titles = "; ".join(title.rstrip(".") for title in sheet.practicals)
    if sheet.observed is None:
        return {
            "work": say("Practical"),
            "strength": say("Not observed: no assessor vouches that this person can do the work."),
            "lines": [say("To be observed, all of it: {titles}.").format(titles=titles)] if titles else [],
            "prints": [],
            "mark": _empty(say("Not observed")),
        }
    observer = sheet.observer or sheet.assessor
    when = day(sheet.observed, words)
    return {
        "work": say("Practical"),
        "strength": say("Observed by {name} on {day}: competent.").format(name=observer, day=when),
        "lines": [say("Seen: {titles}.").format(titles=titles)] if titles else [],
        "prints": [
            words.ngettext(
                "Fingerprint of the observation", "Fingerprints of the observations", len(sheet.observations)
            ),
            list(sheet.observations),
        ],
        "mark": _stamp(say("Observed"), observer, when),
    }


def _ink(word: str, when: str) -> dict[str, str]:
    return {"kind": "ink", "word": word, "day": when}


def _stamp(word: str, name: str, when: str) -> dict[str, str]:
    return {"kind": "stamp", "word": word, "name": name, "day": when}


def _empty(word: str) -> dict[str, str]:
    return {"kind": "empty", "word": word}


def _cautions(sheet: CertificateSheet, words: NullTranslations) -> list[str]:
    """The course's, and who is meant where they say *ask*."""
    whom = words.gettext("Whom to ask: {contact}.").format(contact=sheet.contact.rstrip("."))
    return [*sheet.cautions, whom] if sheet.contact else list(sheet.cautions)


def _not_shown(sheet: CertificateSheet, words: NullTranslations) -> list[str]:
    """What this very certificate leaves open, beside what every one of its course does."""
    say = words.gettext
    found = [] if sheet.supervised else [say("who answered the questions")]
    return found if sheet.observed else [*found, say("that the holder can do the work")]


def _signatures(sheet: CertificateSheet, words: NullTranslations) -> list[str]:
    """The lines for a pen. Where no assessor stands there is no line for one, and a line says for what it
    is signed: else a signature for the check alone would look like an observation.
    """
    say = words.gettext
    lines = [say("Holder: signature, date")]
    if sheet.observer:
        lines += [
            say("Assessor (check): signature, date"),
            say("Assessor (practical): signature, date"),
        ]
    elif sheet.supervised and sheet.observed:
        lines.append(say("Assessor: signature, date"))
    elif sheet.supervised:
        lines.append(say("Assessor (check): signature, date"))
    elif sheet.observed:
        lines.append(say("Assessor (practical): signature, date"))
    return [*lines, say("Issuer: name, signature, date")]


def _checking(sheet: CertificateSheet, words: NullTranslations) -> dict[str, Any]:
    say = words.gettext
    return {
        "label": say("Check this certificate"),
        "calm": say("Scanning shows a long code. That is normal."),
        "ways": [
            say(
                "On the course's site, open “Check a certificate”: paste the long code there, or choose this PDF."
            ),
            say("Or by command: {command}").format(command="journeybook verify FILE.pdf"),
            say(
                "Or by any other program for {standard}: this PDF holds the record as the file {file}."
            ).format(standard="W3C Verifiable Credentials 2.0 (eddsa-jcs-2022)", file=RECORD),
            say("Compare the fingerprint of the issuer's key with the one that the issuer has made known."),
        ],
        "site": sheet.site,
        "key": [say("Fingerprint of the issuer's key"), sheet.key.split()],
        "facts": [
            [say("Certificate"), sheet.id.removeprefix("urn:uuid:")],
            [say("Digest of the course, its beginning"), _grouped(sheet.digest)],
        ],
    }


def _grouped(digest: str) -> str:
    """The beginning of a digest, as every page shows it."""
    return " ".join(digest[at : at + 4] for at in range(0, 16, 4))

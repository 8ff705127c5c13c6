"""The class sheet of a sitting: who sat, who checked whom, whose fingerprint it was; signed in ink, and kept.

It is what makes a check supervised: the assessor sees who each person is, and writes down the fingerprint that the
screen shows when somebody hands in. The passphrase is never on it.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from journeybook.pages.build_facts import short_digest
from journeybook.pages.filters import day
from journeybook.pages.words_catalogue import load_catalogue
from journeybook.paper.press import SIZES, press

GROUPS, LETTERS_A_GROUP = 4, 4
"""Of a fingerprint (``marking.fingerprint``)."""


@dataclass(frozen=True, kw_only=True)
class ClassRow:
    """One person's row."""

    name: str
    person: str
    """The number that tells this person from all others at the employer."""
    workplace: str
    ticket: str
    extra_minutes: int
    oral: bool
    fingerprint: str = ""
    """Of the attempt that is held already, ``AAAA-BBBB-CCCC-DDDD``; empty leaves boxes to write in."""


@dataclass(frozen=True, kw_only=True)
class ClassSheet:
    """A class as its sheet shows it; texts are plain."""

    language: str
    """BCP 47 tag of the words on it."""
    title: str
    """Of the class."""
    course: str
    """Title of the course."""
    version: str
    digest: str
    """SHA-256 of the compiled course, in hex."""
    profile: str
    """Whose rules the course was built for, in words."""
    held_on: date
    location: str
    assessor: str
    basis: str
    """By what right the assessor holds the sitting."""
    identity: str
    """How it is checked who each person is."""
    trainer: str = ""
    trained: date | None = None
    minutes: int
    example: bool
    """Whether the course's unit is invented."""
    cautions: tuple[str, ...]
    limits: tuple[str, ...]
    """What a result of the course does not prove, a few words each."""
    rows: tuple[ClassRow, ...]
    made: datetime
    """When the sitting was made: the date of the file."""


def class_sheet_data(sheet: ClassSheet, *, paper: str = SIZES[0]) -> dict[str, Any]:
    """What the template reads."""
    words = load_catalogue(sheet.language)[0]
    say = words.gettext
    trained = day(sheet.trained, words) if sheet.trained else ""
    return {
        "title": say("Class sheet"),
        "class": sheet.title,
        "course": sheet.course,
        "language": sheet.language,
        "paper": paper,
        "example": say("Example unit: not valid for work") if sheet.example else "",
        "facts": [
            [say("Course"), f"{sheet.course}, {say('version')} {sheet.version}"],
            [say("Contents"), short_digest(sheet.digest)],
            [say("Rules of"), sheet.profile],
            [say("Day"), day(sheet.held_on, words)],
            [say("Place"), sheet.location],
            [say("Time"), say("%(minutes)d min") % {"minutes": sheet.minutes}],
            [say("Assessor"), f"{sheet.assessor}, {sheet.basis}" if sheet.basis else sheet.assessor],
            [say("Trainer"), f"{sheet.trainer}, {trained}" if trained and sheet.trainer else sheet.trainer or trained],
            [say("Identity checked by"), sheet.identity],
        ],
        "how": [
            say("The assessor reads the passphrase out in the room, not before; it stands on no paper."),
            say("Look at each person's proof of identity before they begin, and tick."),
            say(
                "When somebody hands in, compare the name on the screen and write down the fingerprint it shows; the "
                "person signs the row."
            ),
            say(
                "For answers on paper the fingerprint comes when they are keyed in; this sheet is then printed again, "
                "and signed."
            ),
            f"{say('Passing does not prove:')} "
            f"{'; '.join([say('that somebody can do the work'), *sheet.limits])}.",
        ],
        "cautions": list(sheet.cautions),
        "columns": [
            "",
            say("Name, number, workplace"),
            say("Ticket"),
            say("Extra"),
            say("Identity"),
            say("Fingerprint on handing in"),
            say("Signature of the person"),
        ],
        "rows": [_row(row, say) for row in sheet.rows],
        "words": {
            "page": say("Page"),
            "checked": say("Identity checked"),
            "sworn": say(
                "I saw each person whose box is ticked answer alone, and the fingerprints are those that were shown."
            ),
            "assessor": say("Signature of the assessor"),
            "day": say("Day"),
            "begun": say("Begun at"),
            "ended": say("Ended at"),
            "present": say("People"),
        },
    }  # fmt: skip


def _row(row: ClassRow, say: Any) -> dict[str, Any]:
    extra = [say("+%(minutes)d min") % {"minutes": row.extra_minutes}] if row.extra_minutes else []
    if row.oral:
        extra.append(say("read out"))
    return {
        "name": row.name,
        "about": " · ".join(part for part in (row.person, row.workplace) if part),
        "ticket": row.ticket,
        "extra": extra,
        "fingerprint": row.fingerprint.split("-") if row.fingerprint else [" " * LETTERS_A_GROUP] * GROUPS,
        "held": bool(row.fingerprint),
    }


def class_sheet_pdf(sheet: ClassSheet, *, paper: str = SIZES[0]) -> bytes:
    """Return the PDF. Raises NoPress, NotSet."""
    return press("class-sheet", class_sheet_data(sheet, paper=paper), made=sheet.made)

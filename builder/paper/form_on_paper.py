"""One person's form as paper knows it: whose it is, when and how long it is sat, what it asks."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property
from typing import Any

from journeybook.marking import canonical
from journeybook.marking.fingerprint import fingerprint
from journeybook.pages.filters import day
from journeybook.pages.words_catalogue import load_catalogue
from journeybook.paper.asked import PaperQuestion
from journeybook.paper.asked_kinds import asked_on_paper
from journeybook.paper.imprint import CourseInPrint, standing_of

TYPES = ("normal", "large")
"""Sizes of type."""


@dataclass(frozen=True, kw_only=True)
class FormOnPaper:
    """A ticket, its form, and the words round them. The same form gives the same papers, byte for byte."""

    printed: CourseInPrint
    ticket: str
    name: str
    person: str
    """The number that tells this person from all others at the employer."""
    workplace: str
    class_title: str
    held_on: date
    location: str
    minutes: int
    """What everybody has."""
    extra_minutes: int
    oral: bool
    """Whether the questions are read out to this person."""
    form: Sequence[Mapping[str, Any]]
    """As ``marking.draw.draw_form`` gives it."""
    made: datetime
    """When the sitting was made: the date of the files."""

    @cached_property
    def questions(self) -> list[PaperQuestion]:
        """What it asks, in order."""
        return asked_on_paper(self.printed, self.ticket, self.form)

    @property
    def mark(self) -> str:
        """The fingerprint of the form: of the course's digest, the ticket, and what was drawn, in order.

        It stands on the question paper and on the answer sheet, so that the two are kept together. Answers do not
        enter it: it is not the fingerprint of the attempt that the class sheet has.
        """
        drawn = [
            {"q": one["q"], "variant": one["variant"], "options": [*one["options"]]} for one in self.form
        ]
        return fingerprint(
            canonical.write({"digest": self.printed.digest, "form": [*drawn], "ticket": self.ticket})
        )

    def head(self) -> dict[str, Any]:
        """What stands at the head of both papers, by the words beside it."""
        say, wording, course = self.printed.say, self.printed.wording, self.printed.course
        words = load_catalogue(self.printed.language)[0]
        time = say("%(minutes)d min") % {"minutes": self.minutes + self.extra_minutes}
        if self.extra_minutes:
            time += " " + say("(%(minutes)d and %(extra)d extra)") % {
                "minutes": self.minutes,
                "extra": self.extra_minutes,
            }
        check = course.check
        return {
            "language": self.printed.language,
            "course": wording.plain(course.title),
            "check": wording.plain(check.title) if check is not None else "",
            "standing": standing_of(self.printed),
            "example": say("Example unit: not valid for work") if course.kit.is_example else "",
            "ticket": self.ticket,
            "mark": self.mark,
            "facts": [
                [say("Name"), self.name],
                [say("Number"), self.person],
                [say("Workplace"), self.workplace],
                [say("Class"), self.class_title],
                [say("Day"), day(self.held_on, words)],
                [say("Place"), self.location],
                [say("Time"), time],
                [say("Questions"), str(len(self.form))],
            ],
            "oral": say("The questions are read out to this person.") if self.oral else "",
        }

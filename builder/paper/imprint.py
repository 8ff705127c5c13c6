"""What every paper of a course says of itself: whose it is, which version, under which rules, whom to ask."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from gettext import NullTranslations

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.build_facts import short_digest
from journeybook.pages.words_catalogue import load_catalogue
from journeybook.paper.rich_text import Run, runs_of


@dataclass(frozen=True, kw_only=True)
class CourseInPrint:
    """A course with what is needed to print anything of it."""

    course: Course
    """As it was checked: ``draft`` says whether this very content is a release."""
    digest: str
    """SHA-256 of the compiled course, in hex."""

    @property
    def language(self) -> str:
        """The tag of the course's language."""
        return self.course.languages[0]

    @property
    def wording(self) -> Wording:
        """What expands the course's texts."""
        return Wording(self.course)

    @property
    def catalogue(self) -> NullTranslations:
        """The words of the interface in the course's language."""
        return load_catalogue(self.language)[0]

    @property
    def say(self) -> Callable[[str], str]:
        """Looks one of them up."""
        return self.catalogue.gettext


def standing_of(printed: CourseInPrint) -> str:
    """``Version 1.0, draft, not released · 1a2b 3c4d 5e6f 7a8b``: which content this is, for a human eye."""
    say, course = printed.say, printed.course
    version = say("Version %(version)s") % {"version": course.version}
    draft = f", {say('draft, not released')}" if course.draft else ""
    return f"{version}{draft} · {short_digest(printed.digest)}"


def imprint_of(printed: CourseInPrint) -> str:
    """One line for the foot: issuer, course, standing, rules, whom to ask."""
    say, course = printed.say, printed.course
    contact = course.contact
    return " · ".join(
        [
            course.issuer.name,
            printed.wording.plain(course.title),
            standing_of(printed),
            f"{say('Rules of')} {course.profile.title}",
            f"{say('Ask')} {contact.name}, {contact.reach}",
        ]
    )


def cautions_of(printed: CourseInPrint) -> list[list[Run]]:
    """The cautions at the foot of every page of the course."""
    wording = printed.wording
    return [runs_of(wording, caution) for caution in printed.course.cautions]


def sources_of(printed: CourseInPrint, names: tuple[str, ...]) -> str:
    """What a paper rests on, each source with its clause, and whether anybody has checked it."""
    say, course = printed.say, printed.course
    said = []
    for name in names:
        if name == "kit":
            said.append(course.kit.title)
        elif name in course.sources:
            citation = course.sources[name]
            clause = f", {citation.clause}" if citation.clause else ""
            year = f" ({citation.year})" if citation.year else ""
            standing = "" if citation.is_confirmed else f" ({say('not yet confirmed')})"
            said.append(f"{citation.title}{clause}{year}{standing}")
    return " · ".join(said)

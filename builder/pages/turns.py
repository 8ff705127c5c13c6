"""The way through a course: which leaf comes before and after which."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.words_catalogue import load_catalogue


@dataclass(frozen=True, kw_only=True)
class Turn:
    """A link to the leaf before or after."""

    href: str
    """A ``page:`` link."""
    title: str
    label: str
    """What going there means: next lesson, next operation, the check."""


def turns(course: Course, wording: Wording) -> dict[str, tuple[Turn, Turn | None]]:
    """For each ``module/ID`` and ``lesson/ID`` the leaf before and the leaf after it.

    Lessons lead straight on to the first lesson of the next operation; the last leads to the check, or
    back to the card where there is none.
    """
    words = load_catalogue(course.languages[0])[0].gettext
    card = Turn(href="page:card", title=words("Route card"), label=words("Back"))
    check = (
        Turn(href="page:check", title=wording.plain(course.check.title), label=words("Next"))
        if course.check is not None
        else Turn(href="page:card", title=words("Route card"), label=words("All lessons done"))
    )
    found: dict[str, tuple[Turn, Turn | None]] = {}
    line = [(module, lesson) for module in course.modules for lesson in module.lessons]
    for index, (module, lesson) in enumerate(line):
        before = card
        if index:
            earlier = line[index - 1][1]
            before = Turn(
                href=f"page:lesson/{earlier.id}", title=wording.plain(earlier.title), label=words("Back")
            )
        after = check
        if index + 1 < len(line):
            later_module, later = line[index + 1]
            label = words("Next lesson")
            if later_module is not module:
                label = words("Next: operation %(operation)d") % {"operation": later_module.operation}
            after = Turn(href=f"page:lesson/{later.id}", title=wording.plain(later.title), label=label)
        found[f"lesson/{lesson.id}"] = (before, after)
    found |= _of_practicals(course, wording, card, check)
    for module in course.modules:
        start = None
        if module.lessons:
            first = module.lessons[0]
            start = Turn(
                href=f"page:lesson/{first.id}", title=wording.plain(first.title), label=words("First lesson")
            )
        found[f"module/{module.id}"] = (card, start)
    return found


def _of_practicals(
    course: Course, wording: Wording, card: Turn, check: Turn
) -> dict[str, tuple[Turn, Turn | None]]:
    """For each ``practical/ID``: they follow the check, one after the other, and lead back to the card."""
    words = load_catalogue(course.languages[0])[0].gettext
    line = list(course.practicals.values())
    before = card if course.check is None else Turn(href=check.href, title=check.title, label=words("Back"))
    found: dict[str, tuple[Turn, Turn | None]] = {}
    for index, practical in enumerate(line):
        after = Turn(href="page:card", title=words("Route card"), label=words("Back to the"))
        if index + 1 < len(line):
            later = line[index + 1]
            after = Turn(
                href=f"page:practical/{later.id}",
                title=wording.plain(later.title),
                label=words("Next practical"),
            )
        found[f"practical/{practical.id}"] = (before, after)
        before = Turn(
            href=f"page:practical/{practical.id}", title=wording.plain(practical.title), label=words("Back")
        )
    return found

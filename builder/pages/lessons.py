"""The lessons of a course with what the search finds in them: the largest part of a site, made in one go.

Nothing here depends on the digest of the course or on whether it is released, so the lessons can be made while the
course is still being checked and compiled.
"""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.leaf import SettledLeaf
from journeybook.pages.lesson_page import lesson_leaf
from journeybook.pages.links import Targets
from journeybook.pages.search_index import Entry, lesson_entry
from journeybook.pages.turns import turns


@dataclass(frozen=True, kw_only=True)
class MadeLesson:
    """One lesson, ready for both editions."""

    leaf: SettledLeaf
    entry: Entry
    """What the search finds."""


def made_lessons(course: Course) -> list[MadeLesson]:
    """Every lesson of a course, in course order."""
    wording, targets = Wording(course), Targets(course)
    way = turns(course, wording)
    made = []
    for module in course.modules:
        for lesson in module.lessons:
            leaf = lesson_leaf(course, wording, module, lesson, way[f"lesson/{lesson.id}"])
            # The entry after the leaf: the words of its texts are known then, and are not read again.
            entry = lesson_entry(course, wording, module.operation, lesson)
            made.append(MadeLesson(leaf=targets.settled(leaf), entry=entry))
    return made

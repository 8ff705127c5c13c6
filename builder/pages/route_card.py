"""The route card: the course's front page, one numbered operation a line."""

from __future__ import annotations

from markupsafe import Markup

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf

_CHECK_OPERATION = 90
"""The check's line, unless the course has that many operations itself."""


def check_operation(course: Course) -> int:
    """The number of the line on which the check stands: the last one."""
    last = max((module.operation for module in course.modules), default=0)
    return max(_CHECK_OPERATION, (last // 10 + 1) * 10)


def practical_operation(course: Course, index: int) -> int:
    """The number of a practical's line, counted from 0: they stand below the check, or below the last module."""
    last = max((module.operation for module in course.modules), default=0)
    before = last if course.check is None else check_operation(course)
    return (before // 10 + 1 + index) * 10


def check_questions(course: Course) -> int:
    """How many questions a form has: one for each critical fact, and those of the blueprint's cells."""
    if course.check is None:
        return 0
    return len(course.critical_facts) + sum(cell.draw for cell in course.check.cells)


def route_card_leaf(course: Course, wording: Wording, release: BuildFacts) -> Leaf:
    """The card, with hooks for what a script enters: ``data-next``, ``td.mark``, ``data-cards``."""
    language = course.languages[0]
    body = render(
        language,
        "route-card.html",
        course=course,
        wording=wording,
        release=release,
        modules=course.modules,
        first=course.lessons[0] if course.lessons else None,
        summary=Markup(wording.inline(course.summary)),
        outcomes=[Markup(wording.inline(outcome.text)) for outcome in course.outcomes],
        facts=[Markup(wording.inline(fact.text)) for fact in course.critical_facts],
        check_operation=check_operation(course),
        check_questions=check_questions(course),
        practicals=[
            (practical_operation(course, index), practical)
            for index, practical in enumerate(course.practicals.values())
        ],
    )
    lessons = [
        {
            "id": lesson.id,
            "title": wording.plain(lesson.title),
            "minutes": lesson.minutes,
            "module": module.id,
            "operation": module.operation,
        }
        for module in course.modules
        for lesson in module.lessons
    ]
    return Leaf(
        path=f"{course.id}/index.html",
        slug="card",
        kind="card",
        title=wording.plain(course.title),
        course=course.id,
        body=body,
        data={"lessons": lessons},
        language=language,
    )

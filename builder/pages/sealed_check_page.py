"""The leaf of a sealed check: what it is and where it is taken. It holds no plan, no key and no question."""

from __future__ import annotations

from markupsafe import Markup

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.check_page import SLUG, FactLine
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.route_card import check_operation, check_questions


def sealed_check_leaf(course: Course, wording: Wording) -> Leaf:
    """Return the leaf. Raises ValueError for a course without a check."""
    if course.check is None:
        raise ValueError(f"course {course.id} has no check")
    language = course.languages[0]
    return Leaf(
        path=f"{course.id}/check.html",
        slug=SLUG,
        kind="check",
        title=wording.plain(course.check.title),
        course=course.id,
        body=render(
            language,
            "check-sealed.html",
            course=course,
            wording=wording,
            check=course.check,
            slug=SLUG,
            operation=check_operation(course),
            count=check_questions(course),
            grounds=Markup(wording.block(course.check.grounds)),
            facts=[
                FactLine(id=fact.id, text=Markup(wording.inline(fact.text))) for fact in course.critical_facts
            ],
        ),
        language=language,
        operation=check_operation(course),
    )

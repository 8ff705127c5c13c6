"""The demo course and the pillar drill, loaded once for the tests of papers, and texts that would break a paper."""

from __future__ import annotations

from datetime import UTC, date, datetime
from functools import cache
from pathlib import Path

from journeybook.content.loader import load_courses
from journeybook.content.model import Course
from journeybook.paper.imprint import CourseInPrint

ROOT = Path(__file__).parents[3]
DRILL_ROOT = ROOT / "tests" / "faults" / "base"
MADE = datetime(2026, 11, 27, tzinfo=UTC)
HOSTILE = '#panic("x") $x^2$ @ref <b>&amp; `'
"""Signs that mean something to the typesetter, to HTML and to CommonMark; plain texts show them as they stand."""


@cache
def course(root: Path = ROOT, name: str = "powered-respirator", profile: str = "us") -> Course:
    """A course as it is written."""
    found, _ = load_courses(
        root,
        (name,),
        profile=profile,
        courses_dir="course_src",
        quizzes_dir="quizzes",
        today=date(2026, 11, 27),
    )
    return found[0]


COURSE = course()
DRILL = course(DRILL_ROOT, "pillar-drill", "uk")


def in_print(one: Course = COURSE) -> CourseInPrint:
    """A course with a digest that is easily told."""
    return CourseInPrint(course=one, digest="ab12cd34" * 8)

"""From a project on disk to courses that are ready to show.

Load, audit, compare with the release. What is asked of the compiled course is worked out when it is asked for.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from journeybook.audit import audit
from journeybook.content.load_memo import LoadMemo
from journeybook.content.loader import load_courses
from journeybook.content.model import Course
from journeybook.diagnostics.problem import Problem
from journeybook.marking.compiled import Compiled
from journeybook.marking.release import compare_with_release, last_release
from journeybook.pages.course_pages import Ready
from journeybook.pages.words_catalogue import catalogue_problems
from journeybook.project import Project
from journeybook.trust_setting import trust_of


def courses_of(project: Project) -> tuple[list[Ready], list[Problem]]:
    """The courses without a fault, compiled, and the problems of all of them."""
    courses, problems = loaded_courses(project)
    ready, found = checked_courses(project, courses)
    return ready, problems + found


def loaded_courses(project: Project, memo: LoadMemo | None = None) -> tuple[Sequence[Course], list[Problem]]:
    """The courses without a fault, and what loading found in all of them. ``memo`` remembers for the next time."""
    return load_courses(
        project.root,
        project.courses,
        profile=project.profile,
        courses_dir=project.courses_dir,
        quizzes_dir=project.quizzes_dir,
        today=project.today,
        memo=memo,
    )


def checked_courses(project: Project, courses: Sequence[Course]) -> tuple[list[Ready], list[Problem]]:
    """Loaded courses audited and compared with their releases, and what was found."""
    found = [problem for course in courses for problem in audit(course)]
    ready, problems = compared_courses(project, courses)
    return ready, found + problems


def compared_courses(project: Project, courses: Sequence[Course]) -> tuple[list[Ready], list[Problem]]:
    """Loaded courses compared with their releases, and what was found; compiled only where there is a release."""
    ready: list[Ready] = []
    trust, problems = trust_of(project)
    for course in courses:
        problems += catalogue_problems(course.languages, course.place)
        compiled = Compiled(course)
        released = last_release(project.root / project.courses_dir / course.id, course.profile.id)
        problems += compare_with_release(course, compiled, released)
        is_release = released is not None and released.digest == compiled.digest
        ready.append(Ready(course=replace(course, draft=not is_release), compiled=compiled, trust=trust))
    return ready, problems

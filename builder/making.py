"""From a project on disk to courses that are ready to show.

Load, audit, compile, compare with the release.
"""

from __future__ import annotations

from dataclasses import replace

from journeybook.audit import audit
from journeybook.content.loader import load_courses
from journeybook.diagnostics.problem import Problem
from journeybook.marking.compiled import compile_course
from journeybook.marking.release import compare_with_release, last_release
from journeybook.pages.site import Ready
from journeybook.pages.words_catalogue import catalogue_problems
from journeybook.project import Project


def courses_of(project: Project) -> tuple[list[Ready], list[Problem]]:
    """The courses without a fault, compiled, and the problems of all of them."""
    courses, problems = load_courses(
        project.root,
        project.courses,
        profile=project.profile,
        courses_dir=project.courses_dir,
        quizzes_dir=project.quizzes_dir,
    )
    ready: list[Ready] = []
    for course in courses:
        problems += audit(course)
        problems += catalogue_problems(course.languages, course.place)
        compiled = compile_course(course)
        released = last_release(project.root / project.courses_dir / course.id, course.profile.id)
        problems += compare_with_release(course, compiled, released)
        is_release = released is not None and released.digest == compiled.digest
        ready.append(Ready(course=replace(course, draft=not is_release), compiled=compiled))
    return ready, problems

"""From a project on disk to a finished site: load, audit, compile, write out every page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from journeybook import second_process
from journeybook.content.checks.days_to_come import DAY_TO_COME
from journeybook.content.load_memo import LoadMemo
from journeybook.content.model import Course
from journeybook.diagnostics.report import has_fault
from journeybook.finished import FinishedPage, FinishedSite
from journeybook.making import checked_courses, loaded_courses
from journeybook.pages import assets
from journeybook.pages.faults_page import faults_leaf
from journeybook.pages.lessons import MadeLesson, made_lessons
from journeybook.pages.shell import rack_page
from journeybook.pages.site import Site
from journeybook.project import Project
from journeybook.report import report

ENOUGH_LESSONS = 40
"""From here on a second process saves more than it costs to start."""


def finished_site(
    project: Project, *, name: str, preview: bool = False, memo: LoadMemo | None = None
) -> FinishedSite:
    """The whole site; where a fault stands, the report alone. ``memo`` remembers what was loaded."""
    courses, problems = loaded_courses(project, memo)
    if has_fault(problems):
        _, found = checked_courses(project, courses)
        return FinishedSite(report=report(problems + found, project.root), faulty=True)
    assets.forget()
    lessons = _LessonsApart(courses)
    ready, found = checked_courses(project, courses)
    made = lessons.made()  # fetched even where a fault was found, so that no process is left behind
    problems += found
    said = report(problems, project.root) if problems else ""
    if has_fault(problems):
        return FinishedSite(report=said, faulty=True)
    site = Site(ready, name=name, preview=preview, made=made)
    for_today = any(problem.code == DAY_TO_COME for problem in problems)
    return replace(_finished(site, said), for_today=for_today)


class _LessonsApart:
    """The lessons of all courses, made while the courses are checked and compiled."""

    def __init__(self, courses: Sequence[Course]) -> None:
        self._courses = courses
        many = sum(len(course.lessons) for course in courses) >= ENOUGH_LESSONS
        self._wait = second_process.begin(self._make) if many else self._make

    def _make(self) -> list[list[MadeLesson]]:
        return [made_lessons(course) for course in self._courses]

    def made(self) -> list[list[MadeLesson]]:
        """The lessons of each course."""
        return self._wait()


def faults_everywhere(said: str, last: FinishedSite, name: str) -> FinishedSite:
    """The faults in place of every page of the last preview, so that any open page shows them when it reloads."""
    assets.forget()
    paths = [page.path for page in last.pages] or ["index.html"]
    leaves = [faults_leaf(said, path) for path in paths]
    pages = tuple(
        FinishedPage(path=leaf.path, title=leaf.title, html=rack_page(leaf, name, preview=True).encode())
        for leaf in leaves
    )
    return FinishedSite(pages=pages, files=assets.asset_files(), report=said, faulty=True)


def _finished(site: Site, said: str) -> FinishedSite:
    pages = []
    for path in site.paths:
        title, html = site.page(path)
        pages.append(FinishedPage(path=path, title=title, html=html))
    return FinishedSite(
        pages=tuple(pages), files={path: make() for path, make in site.files.items()}, report=said
    )

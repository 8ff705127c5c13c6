"""What ``mkdocs serve`` shows after a change: loaded and judged at once, made page by page as it is looked at.

A change costs what it touches. The loader remembers the files that are as they were; pages, search data and the
one-file edition are made when a browser asks for them, each as a build makes it; the course is compiled when a page
shows its digest, or where there is a release to compare it with; what the audit finds is told a moment later.
"""

from __future__ import annotations

import gc
import threading
from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

from journeybook.audit import audit
from journeybook.audit.audit_memo import AuditMemo
from journeybook.content.load_memo import LoadMemo
from journeybook.content.model import Course
from journeybook.diagnostics.report import has_fault
from journeybook.making import compared_courses, loaded_courses
from journeybook.pages import assets
from journeybook.pages.faults_page import faults_leaf
from journeybook.pages.shell import rack_page
from journeybook.pages.site import Site
from journeybook.project import Project
from journeybook.report import report

_A_MOMENT = 0.5
"""Seconds after which the audit begins: the page that somebody waits for comes first."""


@dataclass(frozen=True, kw_only=True)
class Shown:
    """The state of the preview after one change."""

    parts: Mapping[str, Callable[[], bytes]]
    """What makes each page and file, by its path."""
    report: str
    """The problems as a person reads them, but for those of the audit; empty where there are none."""
    faulty: bool


class Preview:
    """Keeps from change to change what makes the next one quick."""

    def __init__(self, memo: LoadMemo, pages: Sequence[str], tell: Callable[[str], None]) -> None:
        """``memo`` is that of the first load, ``pages`` are the paths it gave; ``tell`` gets what the audit finds."""
        self._memo = memo
        self._pages = tuple(pages)
        self._tell = tell
        self._change = 0
        self._audits: dict[str, AuditMemo] = defaultdict(AuditMemo)
        self._one_at_a_time = threading.Lock()

    def renewed(self, project: Project, name: str) -> Shown:
        """The site of ``project`` as it is now; where a fault stands, the report in place of every page."""
        self._change += 1
        assets.forget()
        courses, problems = loaded_courses(project, self._memo)
        ready, found = compared_courses(project, courses)
        problems += found
        said = report(problems, project.root) if problems else ""
        if has_fault(problems):
            return Shown(parts=self._faults(said, name), report=said, faulty=True)
        site = Site(ready, name=name, preview=True)
        self._pages = site.paths
        self._later(project, courses)
        parts: dict[str, Callable[[], bytes]] = {path: partial(_page_of, site, path) for path in site.paths}
        return Shown(parts=parts | dict(site.files), report=said, faulty=False)

    def _faults(self, said: str, name: str) -> dict[str, Callable[[], bytes]]:
        """The report at every path of the last good site, so that any open page shows it when it reloads."""
        parts: dict[str, Callable[[], bytes]] = {
            path: partial(_faults_page, said, path, name) for path in ("index.html", *self._pages)
        }
        return parts | {path: partial(bytes, content) for path, content in assets.asset_files().items()}

    def _later(self, project: Project, courses: Sequence[Course]) -> None:
        timer = threading.Timer(_A_MOMENT, self._look_closer, (self._change, project, courses))
        timer.daemon = True
        timer.start()

    def _look_closer(self, change: int, project: Project, courses: Sequence[Course]) -> None:
        """Audit what is shown, and let go of what was shown before: circles of objects are found in half a second."""
        with self._one_at_a_time:
            if change != self._change:
                return  # there is news to look at
            found = [problem for course in courses for problem in audit(course, self._audits[course.id])]
        if found and change == self._change:
            self._tell(report(found, project.root))
        if change == self._change:
            gc.collect()


def _page_of(site: Site, path: str) -> bytes:
    return site.page(path)[1]


def _faults_page(said: str, path: str, name: str) -> bytes:
    return rack_page(faults_leaf(said, path), name, preview=True).encode()

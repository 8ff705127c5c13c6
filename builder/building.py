"""From a project on disk to a finished site: load, audit, compile, write out every page."""

from __future__ import annotations

from journeybook.diagnostics.report import has_fault
from journeybook.finished import FinishedPage, FinishedSite
from journeybook.making import courses_of
from journeybook.pages import assets
from journeybook.pages.faults_page import faults_leaf
from journeybook.pages.site import Site, build_site
from journeybook.project import Project
from journeybook.report import report


def finished_site(project: Project, *, name: str, preview: bool = False) -> FinishedSite:
    """The whole site; where a fault stands, the report alone."""
    courses, problems = courses_of(project)
    said = report(problems, project.root) if problems else ""
    if has_fault(problems):
        return FinishedSite(report=said, faulty=True)
    assets.forget()
    return _finished(build_site(courses, name=name, preview=preview), said)


def faults_everywhere(said: str, last: FinishedSite, name: str) -> FinishedSite:
    """The faults in place of every page of the last preview, so that any open page shows them when it reloads."""
    assets.forget()
    paths = [page.path for page in last.pages] or ["index.html"]
    leaves = tuple(faults_leaf(said, path) for path in paths)
    site = Site(leaves=leaves, shells={}, name=name, files=assets.asset_files(), preview=True)
    return _finished(site, said, faulty=True)


def _finished(site: Site, said: str, *, faulty: bool = False) -> FinishedSite:
    pages = tuple(
        FinishedPage(path=leaf.path, title=leaf.title, html=site.page(leaf).encode()) for leaf in site.leaves
    )
    return FinishedSite(pages=pages, files=site.files, report=said, faulty=faulty)

"""The frame round a leaf: head, index tabs, strip, foot, and what the browser may load.

The policy was tried in Chromium 156 and Firefox ESR, over http and from file://: in both, ``'self'`` lets the
page load the files beside it, and nothing else loads.
"""

from __future__ import annotations

import posixpath
from collections.abc import Callable
from urllib.parse import quote

from markupsafe import Markup, escape

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages import gaps
from journeybook.pages.build_facts import BuildFacts, short_digest
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf, SettledLeaf
from journeybook.pages.links import Targets

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self' data:; "
    "connect-src 'none'; form-action 'none'; base-uri 'none'"
)
"""Content Security Policy Level 3, as a meta element; frame-ancestors cannot stand in one."""

PREVIEW_POLICY = POLICY.replace("script-src 'self'", "script-src 'self' 'unsafe-inline'").replace(
    "connect-src 'none'", "connect-src 'self'"
)
"""For ``mkdocs serve`` alone, which puts a script into each page that asks whether a file was saved."""

_RIGHT_TO_LEFT = frozenset({"ar", "arc", "ckb", "dv", "fa", "he", "ps", "sd", "ug", "ur", "yi"})

# A card with ruled lines; in the page itself, so that no browser asks for /favicon.ico.
ICON = "data:image/svg+xml," + quote(
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16">'
    '<path fill="#f6f1e4" stroke="#1d2733" d="M2.5.5h11v15h-11z"/>'
    '<path fill="none" stroke="#1d2733" d="M2.5 4.5h11m-8 0v11"/>'
    '<path fill="#12507b" d="M7 7h5v2H7zm0 4h5v2H7z"/></svg>',
    safe="/:=",
)


def direction_of(language: str) -> str:
    """``rtl`` for a language that is written from right to left, else ``ltr``."""
    return "rtl" if language.split("-")[0].lower() in _RIGHT_TO_LEFT else "ltr"


WITH_DIGEST = frozenset({"card", "check", "practical"})
"""Kinds of leaf whose foot shows the course's digest: where a record of it begins, and where one is made."""


def frame_values(course: Course, wording: Wording, release: BuildFacts) -> dict[str, object]:
    """What the parts ``tabs``, ``strip`` and ``foot`` need, in both editions, but for the digest."""
    return {
        "course": course,
        "course_title": wording.plain(course.title),
        "release": release,
        "cautions": [Markup(wording.inline(caution)) for caution in course.cautions],
        "several": False,
        "here": "",
        "operation": 0,
    }


class Shell:
    """Makes whole pages of a course's leaves.

    A page is a frame with a body in it. The frames of all lessons are the same but for what stands in their
    ``gaps``, so each sort is rendered once and then filled, which costs a hundredth of rendering it again.
    """

    def __init__(
        self,
        course: Course,
        wording: Wording,
        release: BuildFacts,
        digest: Callable[[], str],
        *,
        several: bool,
        preview: bool = False,
    ) -> None:
        """``digest`` is asked for the course's digest where a page shows it, ``several``: the site has a rack to go
        back to; ``preview``: the page reloads itself.
        """
        self._digest = digest
        self.targets = Targets(course)
        self._values = frame_values(course, wording, release) | {
            "several": several,
            "policy": PREVIEW_POLICY if preview else POLICY,
        }
        self._rendered: dict[tuple[object, ...], str] = {}
        self._cut: dict[tuple[object, ...], gaps.Cut] = {}

    def page(self, leaf: SettledLeaf) -> bytes:
        """The document of one leaf, every link relative to its path."""
        return self._frame(leaf).filled(
            {
                "title": escape(leaf.title).encode(),
                "slug": leaf.slug.encode(),
                "operation": str(leaf.operation).encode(),
                "body": leaf.in_site,
                "data": leaf.script_data,
            }
        )

    def _frame(self, leaf: SettledLeaf) -> gaps.Cut:
        """The frame of this sort of leaf, with links as they read from its folder."""
        sort = (
            leaf.kind,
            leaf.language,
            leaf.path.count("/"),
            bool(leaf.operation),
            bool(leaf.script_data),
            leaf.scripts,
        )
        place = (*sort, posixpath.dirname(leaf.path))
        if place not in self._cut:
            if sort not in self._rendered:
                self._rendered[sort] = self._render(leaf)
            links_in_place = self.targets.for_site(self._rendered[sort], path=leaf.path, slug=leaf.slug)
            self._cut[place] = gaps.Cut(links_in_place)
        return self._cut[place]

    def _render(self, leaf: SettledLeaf) -> str:
        with_gaps = Leaf(
            path=leaf.path,
            slug=gaps.gap("slug"),
            kind=leaf.kind,
            title=gaps.gap("title"),
            course=leaf.course,
            language=leaf.language,
            scripts=leaf.scripts,
            body=gaps.gap("body"),
        )
        operation = gaps.gap("operation") if leaf.operation else ""
        digest = short_digest(self._digest()) if leaf.kind in WITH_DIGEST else ""
        values = self._values | {"here": leaf.kind, "operation": operation, "digest": digest}
        return _document(with_gaps, values, gaps.gap("data") if leaf.script_data else "")


def rack_page(leaf: Leaf, site_name: str, *, preview: bool = False) -> str:
    """The document of the rack, or of the preview's faults: what belongs to no course."""
    values: dict[str, object] = {
        "course": None,
        "site_name": site_name,
        "here": "rack",
        "operation": 0,
        "policy": PREVIEW_POLICY if preview else POLICY,
    }
    return _document(leaf, values, "")


def _document(leaf: Leaf, values: dict[str, object], script_data: str) -> str:
    return render(
        leaf.language,
        "shell.html",
        **values,
        leaf=leaf,
        body=Markup(leaf.body),
        script_data=Markup(script_data),
        direction=direction_of(leaf.language),
        root="../" * leaf.path.count("/"),
        icon=ICON,
    )

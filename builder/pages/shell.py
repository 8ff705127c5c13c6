"""The frame round a leaf: head, index tabs, strip, foot, and what the browser may load.

The policy was tried in Chromium 156 and Firefox ESR, over http and from file://: in both, ``'self'`` lets the
page load the files beside it, and nothing else loads.
"""

from __future__ import annotations

from urllib.parse import quote

from markupsafe import Markup

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
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


def frame_values(course: Course, wording: Wording, release: BuildFacts) -> dict[str, object]:
    """What the parts ``tabs``, ``strip`` and ``foot`` need, in both editions."""
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
    """Makes whole pages of a course's leaves."""

    def __init__(
        self, course: Course, wording: Wording, release: BuildFacts, *, several: bool, preview: bool = False
    ) -> None:
        """``several``: the site has a rack to go back to; ``preview``: the page reloads itself."""
        self._targets = Targets(course)
        self._values = frame_values(course, wording, release) | {
            "several": several,
            "policy": PREVIEW_POLICY if preview else POLICY,
        }

    def page(self, leaf: Leaf) -> str:
        """The document of one leaf, every link relative to its path."""
        values = self._values | {"here": leaf.kind, "operation": leaf.operation}
        return self._targets.for_site(_document(leaf, values), path=leaf.path, slug=leaf.slug)


def rack_page(leaf: Leaf, site_name: str, *, preview: bool = False) -> str:
    """The document of the rack, or of the preview's faults: what belongs to no course."""
    values: dict[str, object] = {
        "course": None,
        "site_name": site_name,
        "here": "rack",
        "operation": 0,
        "policy": PREVIEW_POLICY if preview else POLICY,
    }
    return _document(leaf, values)


def _document(leaf: Leaf, values: dict[str, object]) -> str:
    return render(
        leaf.language,
        "shell.html",
        **values,
        leaf=leaf,
        body=Markup(leaf.body),
        direction=direction_of(leaf.language),
        root="../" * leaf.path.count("/"),
        icon=ICON,
    )

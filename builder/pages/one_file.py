"""The one-file edition: every leaf of a course in one document, with styles, scripts, fonts and data inside.

Without a script it is a book to scroll or print; with one, ``view/one-file.js`` shows a leaf at a time.
Nothing is loaded, so it opens from a phone's downloads, from a mail and from file:// alike. The policy
names the one style and the one script by their SHA-256 (CSP Level 3, 2.3.1), so that nothing else in the
file can run.
"""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Sequence

from markupsafe import Markup

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages import assets
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.links import Targets
from journeybook.pages.search_index import one_file_search_data
from journeybook.pages.shell import ICON, direction_of, frame_values


def _source_of(text: str) -> str:
    digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode("ascii")
    return f"'sha256-{digest}'"


def _policy(style: str, script: str) -> str:
    return (
        f"default-src 'none'; script-src {_source_of(script)}; style-src {_source_of(style)}; img-src data:; "
        "font-src data:; connect-src 'none'; form-action 'none'; base-uri 'none'"
    )


def one_file(
    course: Course,
    wording: Wording,
    release: BuildFacts,
    leaves: Sequence[Leaf],
    script_words: str,
) -> str:
    """The whole document. ``leaves`` are those of the course; ``script_words`` is the words table as a script."""
    language = course.languages[0]
    targets = Targets(course)
    style = assets.style_with_fonts()
    script = f"{assets.script()}\n{script_words}"
    assert "</script" not in script.lower(), "a script that closes its own element"
    document = render(
        language,
        "one-file.html",
        **frame_values(course, wording, release),
        language=language,
        direction=direction_of(language),
        policy=_policy(style, script),
        icon=ICON,
        style=Markup(style),
        script=Markup(script),
        leaves=[(leaf, Markup(targets.for_one_file(leaf.body, slug=leaf.slug))) for leaf in leaves],
        search=one_file_search_data(course, wording),
    )
    # The frame's own links; those in the leaves are resolved already.
    return targets.for_one_file(document, slug="card")

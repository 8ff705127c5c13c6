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
from journeybook.pages.bench_desk import BenchDesk
from journeybook.pages.bench_html import bench_data
from journeybook.pages.build_facts import BuildFacts, short_digest
from journeybook.pages.engine import render
from journeybook.pages.filters import script_json
from journeybook.pages.gaps import Cut, gap
from journeybook.pages.leaf import SettledLeaf
from journeybook.pages.links import Targets
from journeybook.pages.search_index import Entry, one_file_search_data
from journeybook.pages.shell import ICON, direction_of, frame_values


def _source_of(text: str) -> str:
    digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode("ascii")
    return f"'sha256-{digest}'"


def policy(style: str, script: str) -> str:
    """What a document may load and run that has one style and one script inside: those two and nothing else."""
    return (
        f"default-src 'none'; script-src {_source_of(script)}; style-src {_source_of(style)}; img-src data:; "
        "font-src data:; connect-src 'none'; form-action 'none'; base-uri 'none'"
    )


def one_file(
    course: Course,
    wording: Wording,
    release: BuildFacts,
    digest: str,
    leaves: Sequence[SettledLeaf],
    script_words: str,
    *,
    entries: Sequence[Entry],
    targets: Targets,
) -> bytes:
    """The whole document.

    ``leaves`` and ``entries`` are those of the course; ``script_words`` is the words table as a script. What may be
    megabytes long is left out of the rendering and filled in at the end.
    """
    language = course.languages[0]
    style = assets.style_with_fonts()
    script = f"{assets.script()}\n{script_words}"
    assert "</script" not in script.lower(), "a script that closes its own element"
    frame = render(
        language,
        "one-file.html",
        **frame_values(course, wording, release),
        digest=short_digest(digest),
        language=language,
        direction=direction_of(language),
        policy=policy(style, script),
        icon=ICON,
        style=Markup(gap("style")),
        script=Markup(gap("script")),
        leaves=[(leaf, gap(f"body-{leaf.slug}"), gap(f"data-{leaf.slug}")) for leaf in leaves],
        search=Markup(gap("search")),
        benches=Markup(gap("benches")) if course.benches else "",
    )
    contents = {
        "style": style.encode(),
        "script": script.encode(),
        "search": script_json(one_file_search_data(entries, targets)).encode(),
        "benches": script_json(
            bench_data(BenchDesk(course=course, wording=wording, slug="", language=language))
        ).encode(),
    }
    for leaf in leaves:
        contents[f"body-{leaf.slug}"] = leaf.in_one_file
        contents[f"data-{leaf.slug}"] = leaf.script_data
    # Only the frame's own links are left; those in the leaves are resolved already.
    return Cut(targets.for_one_file(frame, slug="card")).filled(contents)

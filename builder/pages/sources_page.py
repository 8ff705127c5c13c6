"""Every source of the course, and how well each is known."""

from __future__ import annotations

from journeybook.content.model import Course, Standing
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.words_catalogue import load_catalogue


def sources_leaf(course: Course) -> Leaf:
    """The citations in the order of sources.yml."""
    language = course.languages[0]
    words = load_catalogue(language)[0].gettext
    standings = {
        Standing.READ.value: words("Read in the original."),
        Standing.REPORTED.value: words("Seen quoted elsewhere."),
        Standing.FROM_MEMORY.value: words("From memory; not looked up."),
        Standing.COMMON_PRACTICE.value: words("Common practice in the trade; there is no single source."),
    }
    return Leaf(
        path=f"{course.id}/sources.html",
        slug="sources",
        kind="sources",
        title=words("Sources"),
        course=course.id,
        body=render(language, "sources.html", course=course, slug="sources", standings=standings),
        language=language,
    )

"""The page on which the course is searched."""

from __future__ import annotations

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.words_catalogue import load_catalogue


def search_leaf(course: Course, wording: Wording) -> Leaf:
    """The field and the place for results; ``search_index`` makes what is searched."""
    language = course.languages[0]
    return Leaf(
        path=f"{course.id}/search.html",
        slug="search",
        kind="search",
        title=load_catalogue(language)[0].gettext("Search"),
        course=course.id,
        body=render(language, "search.html", course_title=wording.plain(course.title), slug="search"),
        language=language,
    )

"""The rack: the front page of a site that holds several courses."""

from __future__ import annotations

from collections.abc import Sequence

from markupsafe import Markup

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf


def rack_leaf(courses: Sequence[tuple[Course, Wording]], site_name: str, language: str) -> Leaf:
    """The rack with a card for each course, in the order of mkdocs.yml."""
    cards = [(course, Markup(wording.inline(course.summary))) for course, wording in courses]
    return Leaf(
        path="index.html",
        slug="rack",
        kind="rack",
        title=site_name,
        course="",
        body=render(language, "rack.html", site_name=site_name, cards=cards),
        language=language,
    )

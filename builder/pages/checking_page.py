"""The page on which a certificate is checked, offline."""

from __future__ import annotations

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.words_catalogue import load_catalogue


def checking_leaf(course: Course, wording: Wording, trust: str = "") -> Leaf:
    """The page; ``trust`` is the canonical text of the site's trust list, empty where the site knows no signer."""
    language = course.languages[0]
    return Leaf(
        path=f"{course.id}/checking.html",
        slug="checking",
        kind="checking",
        title=load_catalogue(language)[0].gettext("Check a certificate"),
        course=course.id,
        body=render(
            language, "checking.html", course_title=wording.plain(course.title), slug="checking", trust=trust
        ),
        language=language,
        scripts=("deflate", "checking"),
    )

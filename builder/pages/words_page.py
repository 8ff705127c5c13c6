"""The words of the trade, in alphabetical order, with the drawings that show them."""

from __future__ import annotations

from markupsafe import Markup

from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.words_catalogue import load_catalogue


def words_leaf(course: Course, wording: Wording) -> Leaf:
    """The glossary; a drawing that several words name stands at the first of them."""
    language = course.languages[0]
    terms = sorted(course.terms.values(), key=lambda term: term.word.casefold())
    drawn: dict[str, str] = {}
    for term in terms:
        if term.figure:
            drawn.setdefault(term.figure, term.id)
    return Leaf(
        path=f"{course.id}/words.html",
        slug="words",
        kind="words",
        title=load_catalogue(language)[0].gettext("Words of the trade"),
        course=course.id,
        body=render(
            language,
            "words.html",
            course=course,
            wording=wording,
            slug="words",
            terms=[(term, Markup(wording.block(term.meaning))) for term in terms],
            drawn=set(drawn.values()),
        ),
        language=language,
    )

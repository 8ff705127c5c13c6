"""The words of the trade, in alphabetical order, with the drawings that show them."""

from __future__ import annotations

from markupsafe import Markup

from journeybook.content.model import BlockKind, Course, Term
from journeybook.content.wording import Wording
from journeybook.pages.drawing_piece import piece_of
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.words_catalogue import load_catalogue

_SLUG = "words"


def words_leaf(course: Course, wording: Wording) -> Leaf:
    """The glossary; a drawing that several words name stands at the first of them that shows it whole.

    A word that names a part shows that piece of the drawing. Where no word shows the whole, a lesson does; where no
    lesson does either, the first word shows the whole after all.
    """
    language = course.languages[0]
    terms = sorted(course.terms.values(), key=lambda term: term.word.casefold())
    pieces = {term.id: piece for term in terms if (piece := _piece(course, term))}
    in_lessons = {
        block.text for lesson in course.lessons for block in lesson.body if block.kind is BlockKind.FIGURE
    }
    whole: dict[str, str] = {}
    for term in terms:
        if term.figure and term.id not in pieces:
            whole.setdefault(term.figure, term.id)
    for term in terms:
        if term.id in pieces and term.figure not in in_lessons and term.figure not in whole:
            whole[term.figure] = term.id
            del pieces[term.id]
    return Leaf(
        path=f"{course.id}/words.html",
        slug=_SLUG,
        kind="words",
        title=load_catalogue(language)[0].gettext("Words of the trade"),
        course=course.id,
        body=render(
            language,
            "words.html",
            course=course,
            wording=wording,
            slug=_SLUG,
            terms=[(term, Markup(wording.block(term.meaning))) for term in terms],
            drawn=set(whole.values()),
            whole=set(whole),
            pieces=pieces,
        ),
        language=language,
    )


def _piece(course: Course, term: Term) -> Markup:
    figure = course.figures.get(term.figure)
    return (
        piece_of(figure, term.part, f"{_SLUG}-{term.id}") if figure is not None and term.part else Markup("")
    )

"""Job cards: the page that lists them, and each of them, which is one page of paper too."""

from __future__ import annotations

from markupsafe import Markup

from journeybook.content.job_card_size import size_of
from journeybook.content.model import Course, JobCard
from journeybook.content.wording import Wording
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.links import job_card_path, slug_of
from journeybook.pages.words_catalogue import load_catalogue


def job_cards_leaf(course: Course, wording: Wording) -> Leaf:
    """The list, in the order of the files' names."""
    language = course.languages[0]
    words = load_catalogue(language)[0].gettext
    cards = [
        (card, wording.plain(card.title), Markup(wording.inline(card.when)))
        for card in course.job_cards.values()
    ]
    return Leaf(
        path=f"{course.id}/job-cards.html",
        slug="job-cards",
        kind="job-cards",
        title=words("Job cards"),
        course=course.id,
        body=render(language, "job-cards.html", cards=cards),
        language=language,
    )


def job_card_leaf(course: Course, wording: Wording, release: BuildFacts, card: JobCard) -> Leaf:
    """The leaf of one card."""
    language = course.languages[0]
    slug = slug_of("job-card", card.id)
    taken: set[str] = set()

    def write(text: str) -> Markup:
        return Markup(wording.block(text, slug, taken=taken))

    return Leaf(
        path=job_card_path(course.id, card.id),
        slug=slug,
        kind="job-card",
        title=wording.plain(card.title),
        course=course.id,
        body=render(
            language,
            "job-card.html",
            course=course,
            course_title=wording.plain(course.title),
            wording=wording,
            write=write,
            release=release,
            card=card,
            size=size_of(card, course, wording).step,
            cautions=[Markup(wording.inline(caution)) for caution in course.cautions],
            sources=[name for name in card.sources if name == "kit" or name in course.sources],
            slug=slug,
        ),
        language=language,
    )

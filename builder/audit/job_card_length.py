"""A016: every job card fits on one page."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.job_card_size import size_of
from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def find_long_job_cards(course: Course) -> Iterator[Problem]:
    """Job cards that are too long for a page even in small type, as far as can be told without printing them."""
    wording = Wording(course)
    for card in course.job_cards.values():
        if not size_of(card, course, wording).fits:
            yield warning(
                "A016",
                card.place,
                f"The job card {card.id} will hardly fit on one page of A4 or Letter.",
                "Shorten it, take rows out of its table, or make two cards of it.",
            )

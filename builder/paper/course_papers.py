"""Which papers a course has by itself: cards, records, tags and observation sheets, each with its name and its maker.

What belongs to a class, question papers and sheets to sign, needs a sitting and is not here.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from functools import partial

from journeybook.content.model import JobCard, Practical
from journeybook.paper.imprint import CourseInPrint
from journeybook.paper.job_cards import job_cards_pdf
from journeybook.paper.observation import observation_pdf
from journeybook.paper.tags import tags_pdf


class PaperKind(StrEnum):
    """What a paper is for; also the beginning of its file's name."""

    CARD = "card"
    """Hangs where the work is done."""
    RECORD = "record"
    """A card that is filled in and kept: it has ``keep``."""
    TAG = "tag"
    OBSERVATION = "observation"


@dataclass(frozen=True, kw_only=True)
class CoursePaper:
    """One paper of a course, not set yet."""

    kind: PaperKind
    id: str
    """Of the card or of the practical."""
    set: Callable[[], bytes]
    """Returns the PDF; raises NoPress, NotSet."""

    @property
    def file_name(self) -> str:
        """``record-monthly-sheet.pdf``."""
        return f"{self.kind}-{self.id}.pdf"


def kind_of(card: JobCard) -> PaperKind:
    """What a job card is on paper. A tag with ``keep`` is tied on first, so it is a tag."""
    if card.tag:
        return PaperKind.TAG
    return PaperKind.RECORD if card.keep else PaperKind.CARD


def card_papers(
    printed: CourseInPrint, cards: Sequence[JobCard], made: datetime, paper: str
) -> list[CoursePaper]:
    """A paper for each of some cards, in their order."""
    return [
        CoursePaper(
            kind=kind_of(card),
            id=card.id,
            set=partial(tags_pdf if card.tag else job_cards_pdf, printed, [card], made=made, paper=paper),
        )
        for card in cards
    ]


def observation_paper(
    printed: CourseInPrint, practical: Practical, made: datetime, paper: str
) -> CoursePaper:
    """The sheet of a practical."""
    return CoursePaper(
        kind=PaperKind.OBSERVATION,
        id=practical.id,
        set=partial(observation_pdf, printed, practical, made=made, paper=paper),
    )


def course_papers(printed: CourseInPrint, made: datetime, paper: str) -> list[CoursePaper]:
    """Every paper of a course: its cards in the order of their files, then its observation sheets."""
    course = printed.course
    sheets = [observation_paper(printed, practical, made, paper) for practical in course.practicals.values()]
    return [*card_papers(printed, list(course.job_cards.values()), made, paper), *sheets]

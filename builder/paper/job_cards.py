"""The job cards of a course on paper: one page each, or two of them on a page that is cut in half.

How large a card is printed the template finds out by setting it: the largest type in which all of it stands on its
page. What is left over goes to the steps and to the lines that are written on.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from journeybook.content.model import CardBlock, CardBlockKind, JobCard
from journeybook.paper.imprint import CourseInPrint, cautions_of, imprint_of, sources_of
from journeybook.paper.plain_picture import Picture, picture_of
from journeybook.paper.press import SIZES, press
from journeybook.paper.rich_text import blocks_of, runs_of


def job_cards_pdf(
    printed: CourseInPrint,
    cards: Sequence[JobCard],
    *,
    made: datetime,
    paper: str = SIZES[0],
    two_up: bool = False,
) -> bytes:
    """Return the PDF of some cards, in the order given; with ``two_up`` two of them stand side by side.

    The last card stands twice where their number is odd, so that no half of a page is lost. Raises NoPress, NotSet.
    """
    pictures: dict[str, Picture] = {}
    lowered = [card_data(printed, card, pictures) for card in cards]
    if two_up and len(lowered) % 2:
        lowered.append(lowered[-1])
    say = printed.say
    title = f"{printed.wording.plain(printed.course.title)}: {say('Job cards')}"
    if len(cards) == 1:
        title = printed.wording.plain(cards[0].title)
    data = paper_data(printed, title, paper) | {"two-up": two_up, "cards": lowered}
    return press(
        "job-card", data, made=made, pictures={picture.name: picture.data for picture in pictures.values()}
    )


def paper_data(printed: CourseInPrint, title: str, paper: str) -> dict[str, Any]:
    """What cards and tags share: the course's own lines, and the words that are not the author's."""
    say = printed.say
    return {
        "title": title,
        "language": printed.language,
        "paper": paper,
        "example": printed.course.kit.is_example,
        "imprint": imprint_of(printed),
        "cautions": cautions_of(printed),
        "words": {
            "example": say("Example unit: not valid for work"),
            "warning": say("Warning"),
            "stop": say("Stop and ask"),
            "from": say("From"),
            "keep": say("Kept"),
        },
    }


def card_data(printed: CourseInPrint, card: JobCard, pictures: dict[str, Picture]) -> dict[str, Any]:
    """A card as a template reads it; the drawings that it shows join ``pictures``."""
    wording = printed.wording
    return {
        "title": wording.plain(card.title),
        "when": runs_of(wording, card.when),
        "body": [_block(printed, block, pictures) for block in card.body],
        "sources": sources_of(printed, card.sources),
        "record": bool(card.keep),
        "keep": runs_of(wording, card.keep),
    }


def _block(printed: CourseInPrint, block: CardBlock, pictures: dict[str, Picture]) -> dict[str, Any]:
    wording, kind = printed.wording, {"kind": block.kind.value}
    match block.kind:
        case CardBlockKind.STEPS:
            return kind | {"items": [blocks_of(wording, step) for step in block.lines]}
        case CardBlockKind.BLANKS:
            return kind | {"items": [runs_of(wording, label) for label in block.lines]}
        case CardBlockKind.TABLE if block.table is not None:
            return kind | {
                "columns": [runs_of(wording, column) for column in block.table.columns],
                "rows": [[runs_of(wording, cell) for cell in row] for row in block.table.rows],
            }
        case CardBlockKind.FIGURE:
            picture = pictures.setdefault(block.text, picture_of(printed.course.figures[block.text], wording))
            return kind | {"picture": picture.as_data()}
        case _:
            return kind | {"blocks": blocks_of(wording, block.text)}

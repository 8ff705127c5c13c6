"""The tags of a course on paper: job cards with ``tag: true``, two on a page, to be cut out, folded and punched.

The front holds everything down to the first lines to write on, which is what is wrong; the back the rest, which is
what is done about it.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from journeybook.content.model import CardBlockKind, JobCard
from journeybook.paper.imprint import CourseInPrint
from journeybook.paper.job_cards import card_data, paper_data
from journeybook.paper.plain_picture import Picture
from journeybook.paper.press import SIZES, press


def tags_pdf(
    printed: CourseInPrint, tags: Sequence[JobCard], *, made: datetime, paper: str = SIZES[0]
) -> bytes:
    """Return the PDF of some tags, a page for each, with two alike on it.

    Raises NoPress, and NotSet for a tag whose half is too long for half of a page in type that can be read.
    """
    pictures: dict[str, Picture] = {}
    say = printed.say
    data = paper_data(printed, printed.wording.plain(tags[0].title), paper)
    data["tags"] = [_tag(printed, tag, pictures) for tag in tags]
    data["words"] |= {
        "cut": say("Cut here"),
        "fold": say("Fold here, punch both halves"),
        "too-long": "A half of this tag is too long: shorten its texts, or take lines out of it.",
    }
    return press("tag", data, made=made, pictures={each.name: each.data for each in pictures.values()})


def _tag(printed: CourseInPrint, tag: JobCard, pictures: dict[str, Picture]) -> dict[str, Any]:
    """A tag as the template reads it: its blocks parted after the first lines to write on."""
    lowered = card_data(printed, tag, pictures)
    kinds = [block.kind for block in tag.body]
    last = kinds.index(CardBlockKind.BLANKS) + 1 if CardBlockKind.BLANKS in kinds else len(kinds)
    return lowered | {"front": lowered["body"][:last], "back": lowered["body"][last:]}

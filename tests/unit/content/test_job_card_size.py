"""The type in which a job card fills a page grows smaller as the card grows longer."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from importlib.resources import files
from pathlib import Path

from journeybook.content.job_card_size import SIZES, Size, size_of
from journeybook.content.loader import load_course
from journeybook.content.model import CardBlock, CardBlockKind, CardTable, Course, JobCard
from journeybook.content.wording import Wording

BASE = Path(__file__).parents[2] / "faults" / "base"


@cache
def course() -> Course:
    found, problems = load_course(BASE, "pillar-drill", profile="uk")
    assert found is not None, problems
    return found


def size(*blocks: CardBlock, tag: bool = False, title: str = "A card") -> Size:
    card: JobCard = course().job_cards["out-of-use"]
    return size_of(replace(card, tag=tag, title=title, body=blocks), course(), Wording(course()))


def block(kind: CardBlockKind, **what: object) -> CardBlock:
    return CardBlock(kind=kind, place=course().place, **what)  # type: ignore[arg-type]


def steps(count: int) -> CardBlock:
    return block(CardBlockKind.STEPS, lines=("Set the sleeve, lock it, and try it by hand.",) * count)


def rows(count: int) -> CardBlock:
    table = CardTable(columns=("Date", "Name"), rows=((),) * count, place=course().place)
    return block(CardBlockKind.TABLE, table=table)


def test_a_short_card_is_set_in_the_largest_type() -> None:
    assert size(steps(3)) == Size(1, True)


def test_each_further_step_sets_it_no_larger() -> None:
    found = [size(steps(count)).step for count in range(1, 60)]
    assert found == sorted(found)
    assert found[-1] == len(SIZES)


def test_a_card_that_is_too_long_for_the_smallest_type_does_not_fit() -> None:
    assert size(rows(25)).fits
    assert not size(rows(40)).fits


def test_the_hole_and_the_edge_of_a_tag_take_room() -> None:
    assert size(steps(18), tag=True).step > size(steps(18)).step


def test_a_label_that_is_long_has_a_line_for_itself() -> None:
    short, long = (
        ("Name", "Date") * 12,
        ("What was seen, with the number", "What was done about it, and when") * 12,
    )
    assert (
        size(block(CardBlockKind.BLANKS, lines=long)).step
        > size(block(CardBlockKind.BLANKS, lines=short)).step
    )


def test_the_theme_has_a_class_for_each_size() -> None:
    css = (files("journeybook.theme") / "css" / "job-card.css").read_text(encoding="utf-8")
    told = re.findall(r"\.job-card-size-(\d+) \{ --size: ([\d.]+)pt; \}", css)
    assert [(int(step), float(points)) for step, points in told] == list(enumerate(SIZES, start=1))

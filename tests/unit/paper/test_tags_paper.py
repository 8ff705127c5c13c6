"""Tags: two on a page, cut, folded and punched; a half that is too long is a sentence."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from paper_checks import (
    FACES,
    badly_placed,
    faces_of,
    findings_of,
    pages_of,
    picture_of_page,
    standards_of,
    without_spaces,
)
from paper_demo import COURSE, DRILL, HOSTILE, MADE, in_print

from journeybook.paper.press import NotSet
from journeybook.paper.tags import tags_pdf

TAG = COURSE.job_cards["tag-out-tag"]


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_a_page_holds_two_tags_with_a_front_and_a_back_each(paper: str) -> None:
    pdf = tags_pdf(in_print(), [TAG], made=MADE, paper=paper)
    (page,) = pages_of(pdf)
    for once_a_tag in (
        "DO NOT USE",
        "Fault: what was seen, with the number",
        "Tag taken off by, signature, date",
    ):
        assert page.count(once_a_tag) == 2
    assert badly_placed(pdf) == []


def test_the_front_ends_with_what_is_wrong_and_the_back_holds_what_is_done_about_it() -> None:
    (page,) = pages_of(tags_pdf(in_print(), [TAG], made=MADE))
    assert page.index("Told to") < page.index("Broken is no fault") < page.index("Repaired: what")


def test_every_tag_of_a_course_has_a_page() -> None:
    drill_tag = DRILL.job_cards["out-of-use"]
    pages = pages_of(tags_pdf(in_print(DRILL), [drill_tag, replace(drill_tag, title="BROKEN")], made=MADE))
    assert [page.count("OUT OF USE") for page in pages] == [2, 0]
    assert [page.count("BROKEN") for page in pages] == [0, 2]


def test_the_page_says_where_to_cut_and_where_to_fold() -> None:
    (page,) = pages_of(tags_pdf(in_print(), [TAG], made=MADE))
    assert "Cut here" in page
    assert "Fold here, punch both halves" in page


def test_little_of_the_page_is_black() -> None:
    grey = picture_of_page(tags_pdf(in_print(), [TAG], made=MADE)).convert("L")
    inked = sum(255 - value for value in grey.tobytes()) / 255 / (grey.width * grey.height)
    assert inked < 0.1


def test_a_half_that_is_too_long_is_a_sentence() -> None:
    with pytest.raises(NotSet, match="A half of this tag is too long: shorten its texts"):
        tags_pdf(in_print(), [replace(TAG, body=TAG.body * 4)], made=MADE)


def test_a_tag_that_is_kept_says_how_long() -> None:
    (page,) = pages_of(tags_pdf(in_print(), [replace(TAG, keep="A year, with the unit.")], made=MADE))
    assert page.count("Kept: A year, with the unit.") == 2


def test_signs_of_the_typesetter_are_printed_as_they_were_typed() -> None:
    (page,) = pages_of(tags_pdf(in_print(), [replace(TAG, title=HOSTILE)], made=MADE))
    assert without_spaces(page).count('#panic("x")$x^2$@ref<b>&`') == 2


def test_a_tag_is_made_to_be_kept_and_to_be_read_aloud(tmp_path: Path) -> None:
    pdf = tags_pdf(in_print(), [TAG], made=MADE)
    told = standards_of(pdf)
    assert (told["pdf/a"], told["pdf/ua"], told["title"]) == ("3A", "1", "DO NOT USE")
    assert findings_of(pdf, tmp_path) == []
    assert faces_of(pdf) <= FACES
    assert pdf == tags_pdf(in_print(), [TAG], made=MADE)

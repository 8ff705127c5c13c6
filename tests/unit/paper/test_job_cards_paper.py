"""Job cards on paper: one page each in the largest type, everything on it, and nothing on anything else."""

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
    size_of_page,
    standards_of,
    without_spaces,
)
from paper_demo import COURSE, DRILL, HOSTILE, MADE, in_print

from journeybook.content.model import JobCard
from journeybook.content.wording import Wording
from journeybook.paper.job_cards import job_cards_pdf

CARDS = [card for card in COURSE.job_cards.values() if not card.tag]
DRILL_CARD = DRILL.job_cards["before-you-drill"]


def _words_of(card: JobCard) -> list[str]:
    wording = Wording(COURSE)
    texts = [card.title, card.when, card.keep]
    for block in card.body:
        texts += [block.text, *block.lines]
        if block.table is not None:
            texts += [*block.table.columns, *(cell for row in block.table.rows for cell in row)]
    return [wording.plain(text) for text in texts if text]


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_each_card_of_the_demo_course_fills_one_page(paper: str) -> None:
    pdf = job_cards_pdf(in_print(), CARDS, made=MADE, paper=paper)
    assert len(pages_of(pdf)) == len(CARDS)
    assert badly_placed(pdf) == []


def test_everything_that_the_author_wrote_stands_on_the_card() -> None:
    pages = pages_of(job_cards_pdf(in_print(), CARDS, made=MADE))
    for card, page in zip(CARDS, pages, strict=True):
        read = without_spaces(page)
        assert [text for text in _words_of(card) if without_spaces(text) not in read] == []


def test_a_card_says_whose_it_is_and_that_it_is_a_draft_and_of_an_example_unit() -> None:
    (page,) = pages_of(job_cards_pdf(in_print(), CARDS[:1], made=MADE))
    assert page.startswith("EXAMPLE UNIT: NOT VALID FOR WORK")
    assert "Quillon Basin Works" in page
    assert "Version 0.1, draft, not released · ab12 cd34 ab12 cd34" in page
    for caution in COURSE.cautions:
        assert without_spaces(Wording(COURSE).plain(caution)) in without_spaces(page)


def test_a_released_course_without_example_values_says_neither() -> None:
    kit = replace(
        COURSE.kit, values={name: replace(one, example=False) for name, one in COURSE.kit.values.items()}
    )
    printed = in_print(replace(COURSE, draft=False, kit=kit))
    (page,) = pages_of(job_cards_pdf(printed, CARDS[:1], made=MADE))
    assert "EXAMPLE" not in page
    assert "draft" not in page


def test_two_cards_share_a_page_and_the_last_of_an_odd_number_stands_twice() -> None:
    pdf = job_cards_pdf(in_print(), CARDS[:3], made=MADE, two_up=True)
    assert size_of_page(pdf) == (297, 210)
    first, second = pages_of(pdf)
    assert all(CARDS[at].title in first for at in (0, 1))
    assert second.count(CARDS[2].when) == 2
    assert badly_placed(pdf) == []


def test_a_card_that_is_too_long_for_a_page_goes_on_over_the_next_ones() -> None:
    card = replace(CARDS[0], body=CARDS[0].body * 6)
    for two_up in (False, True):
        pdf = job_cards_pdf(in_print(), [card], made=MADE, two_up=two_up)
        pages = pages_of(pdf)
        assert len(pages) > 1
        assert without_spaces("".join(pages)).count("Emergencynumber") >= 6
        assert badly_placed(pdf) == []


def test_a_record_says_how_long_it_is_kept() -> None:
    record = COURSE.job_cards["monthly-examination-sheet"]
    (page,) = pages_of(job_cards_pdf(in_print(), [record], made=MADE))
    assert "Kept: With this unit’s sheets, for 5 years from its date (kit sheet)." in page


def test_a_drawing_is_said_in_words_and_none_of_its_lettering_is_lost(tmp_path: Path) -> None:
    pdf = job_cards_pdf(in_print(DRILL), [DRILL_CARD], made=MADE)
    (page,) = pages_of(pdf)
    assert "collar" in page
    assert findings_of(pdf, tmp_path) == []


def test_no_word_of_a_title_is_wider_than_the_page() -> None:
    card = replace(CARDS[0], title="Atemschutzgerätehauptprüfungsprotokollsammelmappe")
    assert badly_placed(job_cards_pdf(in_print(), [card], made=MADE)) == []


def test_signs_of_the_typesetter_are_printed_as_they_were_typed() -> None:
    card = replace(CARDS[0], title=HOSTILE, when="#eval(1) \\$x\\$ \\<b\\> @nobody")
    (page,) = pages_of(job_cards_pdf(in_print(), [card], made=MADE))
    shown = without_spaces(page)
    assert without_spaces(Wording(COURSE).plain(HOSTILE)) in shown
    assert '#panic("x")$x^2$@ref<b>&`' in shown
    assert "#eval(1)$x$<b>@nobody" in shown


def test_a_paper_is_made_to_be_kept_and_to_be_read_aloud(tmp_path: Path) -> None:
    pdf = job_cards_pdf(in_print(), CARDS, made=MADE)
    assert standards_of(pdf) == {
        "pdf/a": "3A",
        "pdf/ua": "1",
        "language": "en",
        "title": f"{COURSE.title}: Job cards",
    }
    assert findings_of(pdf, tmp_path) == []
    assert faces_of(pdf) <= FACES


def test_the_same_card_gives_the_same_bytes() -> None:
    once = job_cards_pdf(in_print(), CARDS[:2], made=MADE, two_up=True)
    assert once == job_cards_pdf(in_print(), CARDS[:2], made=MADE, two_up=True)

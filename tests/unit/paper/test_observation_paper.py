"""The observation sheet: what the practical's page says, in the order of the work, with room for a pen."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from paper_checks import FACES, badly_placed, faces_of, findings_of, pages_of, standards_of, without_spaces
from paper_demo import COURSE, HOSTILE, MADE, in_print

from journeybook.content.model import Practical
from journeybook.content.wording import Wording
from journeybook.paper.observation import observation_pdf

PRACTICALS = list(COURSE.practicals.values())
FIRST = PRACTICALS[0]


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
@pytest.mark.parametrize("practical", PRACTICALS, ids=lambda practical: practical.id)
def test_a_sheet_of_the_demo_course_is_three_pages_with_nothing_on_anything_else(
    practical: Practical, paper: str
) -> None:
    pdf = observation_pdf(in_print(), practical, made=MADE, paper=paper)
    assert len(pages_of(pdf)) in ((3,) if paper == "a4" else (3, 4))
    assert badly_placed(pdf) == []


def test_everything_that_the_author_wrote_stands_on_the_sheet() -> None:
    wording = Wording(COURSE)
    for practical in PRACTICALS:
        read = without_spaces(" ".join(pages_of(observation_pdf(in_print(), practical, made=MADE))))
        texts = [
            practical.title,
            practical.intro,
            practical.stop,
            *practical.safety,
            *COURSE.certificate_limits,
        ]
        texts += [text for step in practical.steps for text in (step.text, step.look_for)]
        assert [text for text in texts if without_spaces(wording.plain(text)) not in read] == []


def test_what_has_to_be_so_comes_before_the_steps_and_so_does_when_it_is_ended() -> None:
    whole = " ".join(pages_of(observation_pdf(in_print(), FIRST, made=MADE)))
    order = ["Person observed", "Confirm first", "END IT AT ONCE", "11 steps, 7 of them critical", "Result"]
    assert sorted(order, key=whole.index) == order


def test_critical_steps_are_marked_in_words() -> None:
    whole = " ".join(pages_of(observation_pdf(in_print(), FIRST, made=MADE)))
    assert whole.count("CRITICAL") == sum(step.critical for step in FIRST.steps)


def test_the_rule_on_the_sheet_is_the_rule_of_the_record() -> None:
    """A critical step that needed a hint keeps *competent* from standing: whoever has only the paper must know it."""
    whole = " ".join(pages_of(observation_pdf(in_print(), FIRST, made=MADE)))
    assert "that is “no” or “not seen”, or that needed a hint, means not yet competent" in whole


def test_each_page_with_steps_repeats_the_heads_of_the_columns_and_a_line_for_the_name() -> None:
    pages = pages_of(observation_pdf(in_print(), FIRST, made=MADE))
    for page in pages:
        assert "Not seen Prompted" in page
        assert f"{FIRST.title} Person observed" in page
        assert "Version 0.1, draft, not released · ab12 cd34 ab12 cd34" in page


def test_the_result_has_its_two_words_and_a_place_for_the_fingerprint_and_three_signatures() -> None:
    last = pages_of(observation_pdf(in_print(), FIRST, made=MADE))[-1]
    for wanted in (
        "competent not yet competent",
        "Fingerprint of the record, where it was taken on a screen as well",
        "Assessor: signature, date",
        "Second observer: signature, date",
        "Person observed: signature, date",
        "It does not prove",
    ):
        assert wanted in last


def test_signs_of_the_typesetter_are_printed_as_they_were_typed() -> None:
    step = replace(FIRST.steps[0], text=HOSTILE, look_for="#let x = 1")
    pages = pages_of(observation_pdf(in_print(), replace(FIRST, title="#x $ <y>", steps=(step,)), made=MADE))
    read = without_spaces(" ".join(pages))
    assert '#panic("x")$x^2$@ref<b>&`' in read
    assert "#letx=1" in read
    assert read.count("#x$<y>") >= 2


def test_no_word_of_a_title_is_wider_than_the_page() -> None:
    long = replace(FIRST, title="Atemschutzgerätehauptprüfungsprotokollsammelmappenbeschriftung")
    assert badly_placed(observation_pdf(in_print(), long, made=MADE)) == []


def test_a_sheet_is_made_to_be_kept_and_to_be_read_aloud(tmp_path: Path) -> None:
    pdf = observation_pdf(in_print(), FIRST, made=MADE)
    assert standards_of(pdf) == {
        "pdf/a": "3A",
        "pdf/ua": "1",
        "language": "en",
        "title": FIRST.title,
    }
    assert findings_of(pdf, tmp_path) == []
    assert faces_of(pdf) <= FACES
    assert pdf == observation_pdf(in_print(), FIRST, made=MADE)

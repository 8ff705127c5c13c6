"""The question paper as it is printed: whole, readable, kept, the same twice."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
from paper_checks import FACES, faces_of, findings_of, pages_of, size_of_page, standards_of, without_spaces
from pen import words
from sitting_on_paper import demo, misplaced, second

from journeybook.content.wording import Wording
from journeybook.paper.question_paper import question_paper_data, question_paper_pdf

HOSTILE = '#let x = 1; $sqrt(2)$ *loud* _soft_ `code` <b> @ref [a] \\ "q" // end'


@pytest.mark.parametrize("type_size", ["normal", "large"])
@pytest.mark.parametrize("number", [0, 3, 8])
@pytest.mark.parametrize("sat", [demo, second], ids=["demo", "second"])
def test_every_word_of_every_question_stands_on_the_paper_and_none_is_cut(
    sat: Any, number: int, type_size: str, tmp_path: Path
) -> None:
    form = sat().form(number)
    pdf = question_paper_pdf(form, type_size=type_size)
    assert misplaced(pdf) == []
    assert findings_of(pdf, tmp_path) == []
    assert faces_of(pdf) <= FACES
    read = without_spaces(" ".join(pages_of(pdf)))
    plain = Wording(sat().course).plain
    for line, question in zip(form.form, form.questions, strict=True):
        model: Any = sat().course.questions[line["q"]]
        assert without_spaces(plain(model.ask, model.rows[line["variant"]])) in read
        for each in (*question.lettered, *question.numbered):
            assert without_spaces(each.mark + words(each.runs)) in read
        for option in (*model.offered, *model.partnered, *getattr(model, "places", ())):
            assert without_spaces(plain(option.text)) in read


def test_the_paper_says_whose_it_is_and_claims_both_standards() -> None:
    pdf = question_paper_pdf(demo().form())
    assert standards_of(pdf) == {
        "pdf/a": "3A",
        "pdf/ua": "1",
        "language": "en",
        "title": "Questions ABCDE-FGHAA",
    }
    first = pages_of(pdf)[0]
    for told in (
        "Robin Ashdown 0",
        "0400",
        "Bay 3",
        "Wednesday class",
        "2 Dec 2026",
        "Training room 2",
        "45 min",
    ):
        assert told in first
    assert demo().form().mark in first
    assert "EXAMPLE UNIT: NOT VALID FOR WORK" in first
    assert all("ABCDE-FGHAA" in page for page in pages_of(pdf))
    assert "guard mango" not in " ".join(pages_of(pdf))


def test_questions_stand_in_the_drawn_order_and_their_letters_count_it() -> None:
    sat = demo()
    form = sat.form(2)
    plain = Wording(sat.course).plain
    assert [question.number for question in form.questions] == [f"q{n}" for n in range(1, len(form.form) + 1)]
    for line, question in zip(form.form, form.questions, strict=True):
        model = sat.course.questions[line["q"]]
        if model.offers and model.kind not in ("triage", "drill"):
            texts = {option.id: plain(option.text) for option in model.offered}
            assert [each.mark for each in question.lettered] == list("ABCDEFGHIJKL"[: len(texts)])
            assert [words(each.runs) for each in question.lettered] == [texts[id] for id in line["options"]]


def test_extra_time_and_reading_out_are_printed_where_the_ticket_says_so() -> None:
    form = replace(demo().form(), extra_minutes=12, oral=True)
    first = pages_of(question_paper_pdf(form))[0]
    assert "57 min (45 and 12 extra)" in first
    assert "The questions are read out to this person." in first
    assert "read out" not in pages_of(question_paper_pdf(demo().form()))[0]


def test_large_type_is_half_as_large_again() -> None:
    def height(pdf: bytes) -> float:
        text = pypdfium2.PdfDocument(pdf)[0].get_textpage()
        at = text.search("Robin Ashdown").get_next()
        assert at is not None
        _, bottom, _, top = text.get_charbox(at[0])
        return float(top - bottom)

    normal, large = (question_paper_pdf(second().form(), type_size=size) for size in ("normal", "large"))
    assert height(large) == pytest.approx(height(normal) * 17 / 11, rel=0.01)


def test_the_same_form_gives_the_same_bytes() -> None:
    assert question_paper_pdf(demo().form(5)) == question_paper_pdf(demo().form(5))


def test_another_ticket_gives_another_mark_and_the_order_of_letters_enters_it() -> None:
    form = demo().form()
    lines = [dict(line) for line in form.form]
    at = next(at for at, line in enumerate(lines) if len(line["options"]) > 1)
    lines[at] = {**lines[at], "options": list(reversed(lines[at]["options"]))}
    marks = {form.mark, demo().form(1).mark, replace(form, form=lines).mark}
    assert len(marks) == 3


def test_letter_paper_is_as_wide_as_letter_paper() -> None:
    pdf = question_paper_pdf(second().form(), paper="us-letter")
    assert size_of_page(pdf) == (216, 279)
    assert misplaced(pdf) == []


def test_texts_that_look_like_commands_are_printed_as_they_are() -> None:
    sat = second()
    course = replace(
        sat.course,
        title=f"Title {_escaped(HOSTILE)}",
        banks=tuple(
            replace(
                bank,
                questions=tuple(replace(each, ask=f"Ask {_escaped(HOSTILE)}") for each in bank.questions),
            )
            for bank in sat.course.banks
        ),
    )
    form = sat.form()
    form = replace(
        form,
        name=HOSTILE,
        location=HOSTILE,
        class_title=HOSTILE,
        printed=replace(form.printed, course=course),
    )
    pdf = question_paper_pdf(form)
    read = without_spaces(" ".join(pages_of(pdf)))
    assert read.count(without_spaces(HOSTILE)) >= 3 + len(form.questions)
    assert misplaced(pdf) == []


def _escaped(text: str) -> str:
    """So that CommonMark means every sign as it stands."""
    return "".join(f"\\{sign}" if sign in r"\`*_{}[]()#+-.!<>@$/\"" else sign for sign in text)


def test_a_bench_that_is_longer_than_a_page_goes_on_below_its_head_on_the_next() -> None:
    form = second().form()
    questions = form.questions
    at = next(at for at, question in enumerate(questions) if question.bench is not None)
    bench = questions[at].bench
    assert bench is not None
    rows = [[f"{number} · place {number}", *bench.rows[0][len(bench.controls) :]] for number in range(1, 101)]
    long = replace(questions[at], bench=replace(bench, controls=bench.controls[:1], rows=rows))
    form.__dict__["questions"] = [*questions[:at], long, *questions[at + 1 :]]
    pdf = question_paper_pdf(form)
    head = without_spaces(bench.columns[0].words)
    holding = [page for page in map(without_spaces, pages_of(pdf)) if "·place" in page]
    assert len(holding) >= 3
    assert all(head in page for page in holding)
    assert all(any(f"{number}·place{number}" in page for page in holding) for number in range(1, 101))
    assert misplaced(pdf) == []


def test_every_place_of_a_bench_has_its_row() -> None:
    question = next(each for each in second().form().questions if each.kind == "setting")
    assert question.bench is not None
    count = 1
    for _, places in question.controls:
        count *= places
    assert len(question.bench.rows) == count
    assert all(
        len(row) == len(question.controls) + len(question.bench.columns) for row in question.bench.rows
    )


def test_what_a_trial_hides_is_not_printed() -> None:
    sat = demo()
    question = sat.course.questions["bench-why-low-with-new-filters"]
    line = {"q": question.id, "variant": 0, "options": [option.id for option in question.offered]}
    (asked,) = sat.form(form=[line]).questions
    assert asked.bench is not None
    assert ("Hose outlet", "not shown") in asked.bench.standing
    assert "kink" not in str(question_paper_data(sat.form(form=[line]))["questions"][0]["bench"]).lower()

"""The answer sheet: the boxes that each kind fills, on one side where they fit, under the right ticket."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
import zxingcpp
from paper_checks import FACES, faces_of, findings_of, pages_of, standards_of
from sitting_on_paper import demo, misplaced, second

from journeybook.marking.answer_letters import letters
from journeybook.paper.answer_sheet import AnswerRow, answer_row, answer_sheet_data, answer_sheet_pdf


def rows_by_kind() -> dict[str, AnswerRow]:
    questions = second().form().questions
    return {question.kind: answer_row(question) for question in reversed(questions)}


def test_each_kind_has_the_boxes_that_are_keyed_in_for_it() -> None:
    keys = second().keys
    form = second().form()
    for line, question in zip(form.form, form.questions, strict=True):
        row, key = answer_row(question), keys[line["q"]]
        match question.kind:
            case "choice" | "spot":
                assert (row.way, row.marks) == ("cross", letters(len(line["options"])))
            case "choices":
                assert (row.way, row.marks) == ("crosses", letters(len(line["options"])))
            case "order":
                assert (row.way, len(row.marks)) == ("write", len(line["options"]))
            case "match":
                assert (row.way, len(row.marks)) == ("write", len(key["items"]))
            case "triage":
                assert (row.way, len(row.marks)) == ("write", len(line["options"]))
            case "drill":
                assert (row.way, len(row.marks)) == ("write", len(key["moments"]))
            case "number":
                assert (row.way, set(row.units)) == ("number", set(key["units"]))
            case "setting":
                assert [mark.split("1–")[1] for mark in row.marks] == [str(count) for count in key["counts"]]


def test_a_unit_that_is_part_of_the_skill_is_chosen_and_another_is_printed() -> None:
    for sat in (demo(), second()):
        for number in range(9):
            form = sat.form(number)
            for line, question in zip(form.form, form.questions, strict=True):
                if question.kind == "number":
                    key = sat.keys[line["q"]]
                    assert question.choose_unit == (key["unit-needed"] or len(key["units"]) > 1)


@pytest.mark.parametrize("number", range(9))
def test_the_demo_fits_one_side(number: int) -> None:
    assert len(pages_of(answer_sheet_pdf(demo().form(number)))) == 1


@pytest.mark.parametrize("type_size", ["normal", "large"])
@pytest.mark.parametrize("paper", ["a4", "us-letter"])
@pytest.mark.parametrize("sat", [demo, second], ids=["demo", "second"])
def test_the_sheet_is_whole_tagged_and_set_in_our_faces(
    sat: Any, paper: str, type_size: str, tmp_path: Path
) -> None:
    form = sat().form()
    pdf = answer_sheet_pdf(form, paper=paper, type_size=type_size)
    assert misplaced(pdf) == []
    assert findings_of(pdf, tmp_path) == []
    assert faces_of(pdf) <= FACES
    pages = pages_of(pdf)
    assert len(pages) <= 2
    read = " ".join(pages).split()
    assert [word for word in read if word in {question.number for question in form.questions}] == [
        question.number for question in form.questions
    ]
    assert all(form.ticket in page and form.mark in page and form.name in page for page in pages)


def test_it_claims_both_standards_and_says_who_signs() -> None:
    pdf = answer_sheet_pdf(second().form())
    assert standards_of(pdf)["pdf/a"] == "3A"
    assert standards_of(pdf)["pdf/ua"] == "1"
    assert standards_of(pdf)["title"] == "Answer sheet ABCDE-FGHAA"
    (page,) = pages_of(pdf)
    for told in (
        "BEGUN AT",
        "ENDED AT",
        "SIGNATURE OF THE PERSON",
        "SIGNATURE OF THE ASSESSOR",
        "KEYED IN BY, ON",
    ):
        assert told in page


def test_a_form_of_a_hundred_questions_goes_on_and_every_question_has_its_row_once() -> None:
    form = demo().form()
    many = [replace(form.questions[at % 33], number=f"q{at + 1}") for at in range(100)]
    form.__dict__["questions"] = many
    pdf = answer_sheet_pdf(form)
    pages = pages_of(pdf)
    assert 3 <= len(pages) <= 4
    read = " ".join(pages).split()
    assert [word for word in read if word.startswith("q")] == [f"q{at + 1}" for at in range(100)]
    assert misplaced(pdf) == []
    assert "SIGNATURE OF THE PERSON" in pages[0]


def test_the_code_reads_the_ticket() -> None:
    page = pypdfium2.PdfDocument(BytesIO(answer_sheet_pdf(demo().form())))[0]
    read = zxingcpp.read_barcodes(page.render(scale=3).to_pil())
    assert [code.text for code in read] == ["ABCDE-FGHAA"]


def test_the_sheet_and_the_question_paper_of_a_ticket_bear_the_same_mark() -> None:
    from journeybook.paper.question_paper import question_paper_data

    form = demo().form(4)
    assert answer_sheet_data(form)["mark"] == question_paper_data(form)["mark"] == form.mark


def test_the_sheet_says_nothing_of_the_questions() -> None:
    form = second().form()
    (page,) = pages_of(answer_sheet_pdf(form))
    for question in form.questions:
        for each in question.lettered:
            said = "".join(run.get("text", "") for run in each.runs)
            assert said not in page
    assert answer_sheet_pdf(form) == answer_sheet_pdf(second().form())

"""From a form to paper, from its letters to a keyed file, from there to marks: what was meant is what is marked."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from pen import Pen
from sitting_on_paper import TICKETS, Sat, demo, second

from journeybook.marking.mark import mark
from journeybook.paper.asked_kinds import ASKED
from journeybook.sittings import sitting_file
from journeybook.sittings.arrivals import arrivals
from journeybook.sittings.inbox import Told, course_from, take_in
from journeybook.sittings.keyed import empty_file
from journeybook.sittings.paper_answers import raw_answer


def right_answers(sat: Sat, number: int) -> list[str]:
    """What somebody who knows everything writes on the answer sheet, question by question."""
    form, pen = sat.form(number), Pen(sat.course)
    return [
        pen.right(sat.course.questions[line["q"]], paper, sat.keys[line["q"]], line["variant"])
        for line, paper in zip(form.form, form.questions, strict=True)
    ]


def handed_in(sat: Sat, number: int, answers: list[str], folder: Path) -> Told:
    """The answers keyed in as they stand, and taken in."""
    place = sat.sitting.people[number]
    text = empty_file(sat.sitting, place, sat.content).replace('keyed-by: ""', 'keyed-by: "A. Fenwright"')
    for row, answer in enumerate(answers, 1):
        assert f'  q{row}: ""' in text
        text = text.replace(f'  q{row}: ""', f'  q{row}: "{answer}"')
    keyed, private = folder / "one.keyed.yml", folder / "class.sitting.json"
    keyed.write_text(text, encoding="utf-8")
    sitting_file.write(private, sat.sitting)
    course = course_from(sat.compiled.data)
    (told,) = take_in(
        arrivals([keyed]),
        [private],
        received="2026-12-02T10:00:00Z",
        course_of=lambda _: course,
        say_of_certificate=lambda _: "",
    )
    return told


def test_the_form_of_the_second_course_has_every_kind() -> None:
    assert {question.kind for question in second().form().questions} == set(ASKED)


@pytest.mark.parametrize("number", range(len(TICKETS)))
@pytest.mark.parametrize("sat", [demo, second], ids=["demo", "second"])
def test_whoever_writes_down_the_right_letters_has_every_mark(sat: Any, number: int, tmp_path: Path) -> None:
    told = handed_in(sat(), number, right_answers(sat(), number), tmp_path)
    assert told.outcome == "taken in", told
    assert told.result is not None
    assert (told.result["marks"], told.result["passed"]) == (told.result["of"], True)


def wrong_answers(sat: Sat, number: int) -> dict[str, tuple[int, str]]:
    """Kind -> a question of it and an answer that is wrong through and through."""
    form = sat.form(number)
    right = right_answers(sat, number)
    found: dict[str, tuple[int, str]] = {}
    for at, (line, paper) in enumerate(zip(form.form, form.questions, strict=True)):
        key = sat.keys[line["q"]]
        tries = {
            "choice": [one.mark for one in paper.lettered],
            "spot": [one.mark for one in paper.lettered],
            "choices": [one.mark for one in paper.lettered],
            "order": [" ".join(reversed(right[at].split())), " ".join(one.mark for one in paper.lettered)],
            "number": [" ".join(["123456789", *right[at].split()[1:]])],
            "setting": ["1", "2", "3", "1 1"],
            "match": [" ".join([*right[at].split()[1:], right[at].split()[0]])],
            "triage": [" ".join(one.mark for _ in paper.numbered) for one in paper.lettered],
            "drill": [deed.mark for deed in (paper.drill[0].deeds if paper.drill else [])],
        }[paper.kind]
        for text in tries:
            try:
                raw = raw_answer(key, line["options"], text)
            except ValueError:
                continue
            marked = mark(key, line["variant"], raw)
            if marked.mark == 0 and marked.remarks.get("problem") != "malformed":
                found.setdefault(paper.kind, (at, text))
    return found


def test_one_answer_that_is_wrong_costs_its_question_and_no_other(tmp_path: Path) -> None:
    wrong = wrong_answers(second(), 0)
    assert set(wrong) == set(ASKED), "one of each kind"
    for kind, (at, text) in wrong.items():
        folder = tmp_path / kind
        folder.mkdir()
        answers = right_answers(second(), 0)
        assert answers[at] != text
        answers[at] = text
        told = handed_in(second(), 0, answers, folder)
        assert told.result is not None, kind
        assert told.result["marks"] == told.result["of"] - 1000, kind


def test_a_question_left_empty_costs_itself(tmp_path: Path) -> None:
    answers = right_answers(demo(), 1)
    told = handed_in(demo(), 1, ["", *answers[1:]], tmp_path)
    assert told.result is not None
    assert told.result["marks"] == told.result["of"] - 1000


def test_a_number_that_can_be_read_in_two_ways_is_asked_about_and_not_marked(tmp_path: Path) -> None:
    answers = right_answers(second(), 0)
    at = [question.kind for question in second().form().questions].index("number")
    told = handed_in(second(), 0, [*answers[:at], "4.284", *answers[at + 1 :]], tmp_path)
    assert (told.outcome, [problem.code for problem in told.problems]) == ("refused", ["Y003"])
    (problem,) = told.problems
    assert (
        problem.message
        == f"What is keyed for q{at + 1}, 4.284, can be read in two ways: as decimals, or as thousands."
    )
    assert '"4.2840"' in problem.mend

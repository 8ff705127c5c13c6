"""Nothing on a question paper tells what is right: not its words, not its bytes, not what it was made from."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from io import BytesIO
from typing import Any

import pikepdf
import pytest
from paper_checks import pages_of, without_spaces
from sitting_on_paper import Sat, demo, second

from journeybook.content.model import Drill
from journeybook.content.wording import Wording
from journeybook.paper.asked_kinds import ASKED
from journeybook.paper.imprint import CourseInPrint
from journeybook.paper.question_paper import question_paper_data, question_paper_pdf


def uncompressed(pdf: bytes) -> str:
    """Every byte of a paper, with nothing packed, one character a byte."""
    out = BytesIO()
    with pikepdf.open(BytesIO(pdf)) as opened:
        opened.save(out, compress_streams=False, stream_decode_level=pikepdf.StreamDecodeLevel.all)
    return out.getvalue().decode("latin-1")


def secrets(sat: Sat, questions: list[str]) -> Iterator[str]:
    """Every text that says why an answer is right or wrong, or what follows a deed, in plain words."""
    plain = Wording(sat.course).plain
    for name in questions:
        question: Any = sat.course.questions[name]
        parts = [
            *question.offered,
            *question.partnered,
            *getattr(question, "rules", ()),
            *getattr(question, "slips", ()),
        ]
        texts = [question.why, *(getattr(part, "reason", "") for part in parts)]
        if question.kind == "drill":
            drill = sat.course.drills[question.drill]
            texts += [text for deed in drill.deeds for text in (deed.told, deed.critical)]
            texts += [moment.text for moment in drill.moments if moment.is_end]
        for row in question.rows:
            yield from (plain(text, row) for text in texts if text)


@pytest.mark.parametrize("number", [0, 4])
@pytest.mark.parametrize("sat", [demo, second], ids=["demo", "second"])
def test_no_reason_and_no_id_stands_in_the_paper(sat: Any, number: int) -> None:
    form = sat().form(number)
    pdf = question_paper_pdf(form)
    read, packed = without_spaces(" ".join(pages_of(pdf))), uncompressed(pdf)
    asked = [line["q"] for line in form.form]
    told = list(secrets(sat(), asked))
    assert told
    shown = without_spaces(
        " ".join(
            Wording(sat().course).plain(option.text)
            for name in asked
            for option in sat().course.questions[name].offered
        )
    )
    for text in map(without_spaces, told):
        assert text in shown or text not in read, text
    for name in asked:
        assert name not in packed
        assert name not in read
    assert not re.search(r'"right"|accepted|must-pass|critical', read)


def other(names: list[str], right: str) -> str:
    return next(name for name in names if name != right)


def _drill_otherwise(drill: Drill) -> Drill:
    """The same moments, with everything that says what is right turned round."""
    return replace(
        drill,
        moments=tuple(
            replace(
                moment,
                worth=None if moment.worth is None else 1000 - moment.worth,
                late="",
                deeds=tuple(
                    replace(
                        deed,
                        penalty=500 - min(deed.penalty, 500),
                        told="",
                        critical=deed.critical and "Otherwise.",
                    )
                    for deed in moment.deeds
                ),
            )
            for moment in drill.moments
        ),
    )


OTHERWISE: dict[str, Callable[[Any], Any]] = {
    "choice": lambda one: replace(one, right=other([each.id for each in one.options], one.right)),
    "choices": lambda one: replace(
        one, right=tuple(each.id for each in one.options if each.id not in one.right) or (one.right[0],)
    ),
    "order": lambda one: replace(
        one,
        rules=tuple(
            replace(rule, first=rule.then[0], then=(rule.first,), critical=not rule.critical) for rule in one.rules
        ),
    ),
    "match": lambda one: replace(
        one,
        items=tuple(
            replace(item, goes_with=one.items[at - 1].goes_with) for at, item in enumerate(one.items)
        ),
    ),
    "number": lambda one: replace(one, right=f"({one.right}) + 7", slips=(), tolerance="1"),
    "spot": lambda one: replace(one, right=other([each.id for each in one.spots], one.right)),
    "triage": lambda one: replace(
        one,
        units=tuple(
            replace(unit, belongs=other([each.id for each in one.places], unit.belongs), dangerous=not unit.dangerous)
            for unit in one.units
        ),
    ),
    "setting": lambda one: replace(one, goals=(), first="", last="", near=0),
    "drill": lambda one: one,
}  # fmt: skip
"""The same question with another right answer."""


def test_another_right_answer_gives_the_same_paper() -> None:
    sat = second()
    form = sat.form()
    assert {question.kind for question in form.questions} == set(OTHERWISE) == set(ASKED)
    turned = replace(
        sat.course,
        banks=tuple(
            replace(
                bank,
                questions=tuple(
                    replace(OTHERWISE[each.kind](each), why="", critical="otherwise")
                    for each in bank.questions
                ),
            )
            for bank in sat.course.banks
        ),
        drills={name: _drill_otherwise(drill) for name, drill in sat.course.drills.items()},
    )
    same = replace(form, printed=CourseInPrint(course=turned, digest=sat.compiled.digest))
    assert turned.questions != sat.course.questions
    assert question_paper_data(same) == question_paper_data(form)
    for before, after in zip(form.questions, same.questions, strict=True):
        assert before.pictures() == after.pictures()
        assert before == after


def test_each_deed_of_a_drill_sends_to_a_row_of_its_own_and_all_ends_read_alike() -> None:
    drills = [question for question in second().form().questions if question.kind == "drill"]
    assert drills
    for question in drills:
        sent = [deed.row for row in question.drill for deed in row.deeds]
        assert len(set(sent)) == len(sent)
        assert sorted(sent) == [row.number for row in question.drill[1:]]
        ends = [row for row in question.drill[1:] if not row.deeds and not row.read_on]
        assert len(ends) > 1
        assert all(row.blocks == [] for row in ends)


def test_rows_of_a_drill_are_mixed_anew_for_each_ticket() -> None:
    orders = set()
    for number in range(6):
        question = next(each for each in second().form(number).questions if each.kind == "drill")
        by_words = {str(deed.runs): deed.row for row in question.drill for deed in row.deeds}
        orders.add(tuple(by_words[words] for words in sorted(by_words)))
    assert len(orders) > 3

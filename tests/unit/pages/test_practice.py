from __future__ import annotations

import json
import re
from dataclasses import replace

from one_of_each import CHOICE, EVERY, course

from journeybook.content.wording import Wording
from journeybook.marking.mark import mark
from journeybook.pages.practice import practice_data, practice_html

LESSON = course().modules[0].lessons[0]


def test_a_lesson_without_practice_shows_none() -> None:
    assert practice_html(course(), Wording(course()), replace(LESSON, practice=()), "lesson-x") == ""


def test_the_questions_stand_in_the_lessons_order_and_are_counted() -> None:
    html = practice_html(course(), Wording(course()), LESSON, "lesson-x")
    assert re.findall(r'data-question="([^"]+)"', html) == [question.id for question in EVERY]
    total = len(EVERY)
    assert re.findall(rf"question (\d) of {total}", html) == [str(number) for number in range(1, total + 1)]


def test_a_question_without_reasons_can_still_be_read_with_its_answer() -> None:
    assert practice_html(course(), Wording(course()), LESSON, "lesson-x").count("<details") == len(EVERY)


def test_the_data_mark_each_question_and_say_how_it_is_drawn() -> None:
    data = practice_data(course(), LESSON)["practice"]
    assert isinstance(data, dict)
    assert list(data) == [question.id for question in EVERY]
    assert mark(data[CHOICE.id]["key"], 0, "b").mark == 1000
    assert data["guard-05"]["shape"]["variants"] == 2


def test_the_data_are_plain_json() -> None:
    data = practice_data(course(), LESSON)
    assert json.loads(json.dumps(data)) == data

"""In practice a drawing stands once on the page, and there is a way to it and back again."""

from __future__ import annotations

import re
from dataclasses import replace

from one_of_each import CHOICE, CHOICES, ORDER, course

from journeybook.content.model import Block, BlockKind, Course, Figure, Question
from journeybook.content.wording import Wording
from journeybook.diagnostics.problem import Place
from journeybook.pages.lesson_page import lesson_leaf
from journeybook.pages.practice_figure import PracticeFigures
from journeybook.pages.turns import turns

GAP = Figure(
    id="gap",
    title="The *gap* & more",
    alt="Six millimetres of gap.",
    svg='<svg viewBox="0 0 360 240" class="figure"></svg>',
    place=Place(file="course_src/pillar-drill/figures/gap.yml"),
)
ABOUT_THE_GAP: tuple[Question, ...] = (CHOICE, replace(CHOICES, figure="gap"), replace(ORDER, figure="gap"))
DRAWING = 'id="lesson-x-figure-gap-drawing"'


def drawn() -> Course:
    return replace(course(), figures={"gap": GAP})


def figures(*above: str) -> PracticeFigures:
    return PracticeFigures(
        drawn(), Wording(drawn()), "lesson-x", lambda words: words, above=above, questions=ABOUT_THE_GAP
    )


def test_a_question_leads_to_the_drawing_that_the_lesson_shows() -> None:
    assert figures("gap")("gap") == (
        '<p class="figure-above"><a href="#lesson-x-figure-gap">See the drawing above: The gap &amp; more</a></p>'
    )


def test_a_drawing_that_the_lesson_lacks_stands_in_the_first_question_only() -> None:
    show = figures()
    first, second = show("gap"), show("gap")
    assert DRAWING in first
    assert 'aria-label="Six millimetres of gap."' in first
    assert 'id="lesson-x-figure-gap" tabindex="-1"' in first
    assert 'href="#lesson-x-figure-gap"' in second
    assert DRAWING not in second


def test_the_drawing_leads_back_to_every_question_that_leads_to_it() -> None:
    assert re.findall(r'href="#([^"]+)">([^<]+)', figures("gap").ways_back("gap")) == [
        ("lesson-x-q-guard-02-ask", "question 2"),
        ("lesson-x-q-guard-03-ask", "question 3"),
    ]


def test_the_question_that_shows_the_drawing_needs_no_way_back() -> None:
    back = figures().ways_back("gap")
    assert re.findall(r"question (\d)", back) == ["3"]


def test_a_drawing_that_no_question_leads_to_has_no_way_back() -> None:
    assert figures().ways_back("other") == ""


def test_a_figure_that_the_course_lacks_draws_nothing() -> None:
    assert figures()("none") == ""


def test_every_way_on_a_lessons_page_ends_at_something_that_takes_the_focus() -> None:
    place = Place(file="course_src/pillar-drill/modules/10-guard/10-parts.yml")
    plain = drawn()
    module = plain.modules[0]
    lesson = replace(
        module.lessons[0],
        body=(Block(kind=BlockKind.FIGURE, text="gap", place=place),),
        practice=tuple(question.id for question in ABOUT_THE_GAP),
    )
    module = replace(module, lessons=(lesson, *module.lessons[1:]))
    bank = replace(plain.banks[0], questions=ABOUT_THE_GAP)
    whole = replace(plain, modules=(module, *plain.modules[1:]), banks=(bank,))
    wording = Wording(whole)
    body = lesson_leaf(whole, wording, module, lesson, turns(whole, wording)[f"lesson/{lesson.id}"]).body
    ways = re.findall(r'href="#([^"]+)"', body)
    assert len(ways) == 4
    for way in ways:
        assert re.search(rf'<[a-z]+[^>]* id="{way}" tabindex="-1"', body), way
    assert body.count("</svg>") == 1

"""The drawing inside a question says in words what it shows, as everywhere else."""

from __future__ import annotations

from dataclasses import replace

from one_of_each import course

from journeybook.content.model import Figure
from journeybook.content.wording import Wording
from journeybook.diagnostics.problem import Place
from journeybook.pages.question_figure import QuestionFigures

GAP = Figure(
    id="gap",
    title="The gap",
    alt='The gap is **6** mm; \\{not a value\\}, "wide" & open.',
    svg='<svg viewBox="0 0 360 240" class="figure"></svg>',
    place=Place(file="course_src/pillar-drill/figures/gap.yml"),
)


def test_the_words_of_a_drawing_are_words_and_not_markup() -> None:
    drawn = replace(course(), figures={"gap": GAP})
    html = QuestionFigures(drawn, Wording(drawn), "lesson-x")("gap")
    assert 'aria-label="The gap is 6 mm; {not a value}, &#34;wide&#34; &amp; open."' in html


def test_a_figure_that_the_course_lacks_draws_nothing() -> None:
    assert QuestionFigures(course(), Wording(course()), "lesson-x")("none") == ""


def test_in_the_check_every_question_shows_its_drawing_which_stands_once() -> None:
    drawn = replace(course(), figures={"gap": GAP})
    figures = QuestionFigures(drawn, Wording(drawn), "check")
    questions = [figures("gap"), figures("gap")]
    assert all('<use href="#check-figure-gap-drawing"' in html for html in questions)
    assert figures.store().count('id="check-figure-gap-drawing"') == 1

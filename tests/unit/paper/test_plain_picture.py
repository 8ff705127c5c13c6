"""A drawing on paper carries its own colours, says what it shows, and is cut nowhere."""

from __future__ import annotations

import re

import pytest
from paper_demo import COURSE

from journeybook.content.model import Figure
from journeybook.content.wording import Wording
from journeybook.drawing.figure_classes import CLASSES
from journeybook.paper.plain_picture import picture_of, plain_svg, size_of

SVG = '<svg xmlns="http://www.w3.org/2000/svg" class="figure" viewBox="0 0 120 60"><path class="ink" d="M0 0h9"/></svg>'


def test_every_class_that_a_drawing_may_use_has_its_look_in_the_picture() -> None:
    style = plain_svg(SVG).decode().partition("</style>")[0]
    ruled = set(re.findall(r"\.([a-z0-9-]+)", " ".join(re.findall(r"([^{}]*)\{", style))))
    assert CLASSES - ruled == set()


def test_no_variable_and_no_rule_of_a_page_is_left() -> None:
    style = plain_svg(SVG).decode().partition("</style>")[0]
    assert "var(" not in style
    assert "@" not in style
    assert "plate" not in style


def test_ink_is_black_and_paper_white_as_the_theme_prints_them() -> None:
    style = plain_svg(SVG).decode()
    assert ".figure .ink{stroke: #000; stroke-width: 2;}" in style
    assert ".figure .fill-paper{fill: #fff;}" in style


def test_the_drawing_itself_stays_as_it_was() -> None:
    made = plain_svg(SVG).decode()
    assert re.sub(r"<style>.*?</style>", "", made, flags=re.DOTALL) == SVG


def test_a_picture_has_the_words_of_its_figure_with_the_values_in_place() -> None:
    figure = COURSE.figures["float-indicator"]
    picture = picture_of(figure, Wording(COURSE))
    assert picture.name == "figure-float-indicator.svg"
    assert picture.alt
    assert "{" not in picture.alt
    assert (picture.wide, picture.high) == size_of(figure.svg)


def test_every_figure_of_the_demo_course_has_a_size() -> None:
    figures: list[Figure] = list(COURSE.figures.values())
    assert all(min(size_of(figure.svg)) > 0 for figure in figures)


def test_what_is_no_drawing_is_refused() -> None:
    with pytest.raises(ValueError, match="no svg element"):
        plain_svg("<p>nothing</p>")
    with pytest.raises(ValueError, match="no viewBox"):
        size_of("<svg></svg>")

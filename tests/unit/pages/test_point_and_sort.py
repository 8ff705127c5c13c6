"""A drawing to point at and units to sort, as HTML."""

from __future__ import annotations

import re
from dataclasses import replace

from drill_pages import drill_course, page
from one_of_each import SPOT, TRIAGE, course, written

from journeybook.content.wording import Wording
from journeybook.drawing.parts import drawn
from journeybook.pages.practice_figure import PracticeFigures

SLUG = f"lesson-x-q-{SPOT.id}"


def drawing_of(html: str) -> str:
    return html[html.index("<svg") : html.index("</svg>")]


def control_of(html: str) -> str:
    return html[html.index("</svg>") : html.index("<details")]


def test_each_part_in_the_drawing_bears_the_id_of_its_spot() -> None:
    drawing = drawing_of(written(SPOT))
    for spot in ("sleeve", "collar", "knob"):
        assert re.search(rf'id="{SLUG}-guard-from-the-side-{spot}" data-spot="{spot}"', drawing)


def test_each_part_bears_the_letter_that_it_has_in_the_list() -> None:
    html = written(SPOT)
    drawn_letters = re.findall(r'class="spot-mark" data-spot="(\w+)".*?>([A-Z])</text>', drawing_of(html))
    listed = re.findall(r'data-option="(\w+)".*?class="letter">([A-Z])<', control_of(html), re.DOTALL)
    assert drawn_letters == listed == [("sleeve", "A"), ("collar", "B"), ("knob", "C")]


def test_the_list_is_of_radio_buttons_with_one_name() -> None:
    inputs = re.findall(r"<input[^>]*>", control_of(written(SPOT)))
    assert inputs == [
        f'<input type="radio" name="{SPOT.id}" value="{spot}">' for spot in ("sleeve", "collar", "knob")
    ]


def test_the_drawing_is_described_in_words() -> None:
    assert 'role="img" aria-label="From the top: the collar on the quill' in written(SPOT)


def test_a_part_has_a_frame_that_holds_it() -> None:
    drawing = drawing_of(written(SPOT))
    part = drawn(course().figures["guard-from-the-side"].svg).parts["guard-from-the-side-sleeve"].box
    found = re.search(
        r'data-frame="sleeve"><rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"', drawing
    )
    assert found is not None
    assert part is not None
    x, y, width, height = (float(number) for number in found.groups())
    assert x <= part.left
    assert y <= part.top
    assert x + width >= part.right
    assert y + height >= part.bottom


def test_a_small_part_gets_an_area_of_24_pixels_on_the_narrowest_phone() -> None:
    figure = course().figures["guard-from-the-side"]
    thin = figure.svg.replace('height="50"', 'height="8"')
    assert thin != figure.svg
    with_thin = replace(course(), figures={**course().figures, figure.id: replace(figure, svg=thin)})
    drawing = drawing_of(written(SPOT, of=with_thin))
    area = re.search(r'class="spot-area" data-spot="collar" .*?height="([\d.]+)"', drawing)
    assert area is not None
    assert round(float(area[1]) * 306 / 360, 1) == 24
    assert 'class="spot-area" data-spot="sleeve"' not in drawing


def test_its_drawing_stands_in_the_question_though_the_lesson_shows_it() -> None:
    first = course().modules[0].lessons[0]
    figures = PracticeFigures(
        course(), Wording(course()), "lesson-x", str, above=["guard-from-the-side"], questions=[SPOT]
    )
    assert figures.ways_back("guard-from-the-side") == ""
    assert first
    assert "See the drawing above" not in written(SPOT)


def test_a_units_figure_leads_to_the_drawing_above_and_back() -> None:
    figures = PracticeFigures(
        course(), Wording(course()), "lesson-x", str, above=["guard-laid-out"], questions=[TRIAGE]
    )
    assert f'href="#lesson-x-q-{TRIAGE.id}-ask"' in figures.ways_back("guard-laid-out")


def test_every_unit_is_a_group_with_every_place() -> None:
    html = written(TRIAGE)
    cards = html.split('<fieldset class="triage-unit"')[1:]
    assert len(cards) == 2
    for card, unit in zip(cards, ("d1", "d2"), strict=True):
        assert f'data-unit="{unit}"' in card
        assert re.findall(rf'name="{TRIAGE.id}\.{unit}" value="(\w+)"', card) == ["use", "tag"]


def test_a_unit_shows_its_figure() -> None:
    assert "[guard-laid-out]" in written(TRIAGE)


def test_the_answer_says_where_each_unit_belongs_and_why_and_which_are_dangerous() -> None:
    answer = written(TRIAGE).split('<details class="answer">')[1]
    lines = re.findall(r"<li data-reason=.*?</li>", answer, re.DOTALL)
    assert "Use it" in lines[0]
    assert "Nothing is wrong." in lines[0]
    assert "Dangerous" not in lines[0]
    assert "Tag it out" in lines[1]
    assert "It gives way." in lines[1]
    assert "data-critical" in lines[1]
    assert "Dangerous" in lines[1]


def test_a_lesson_of_the_second_course_shows_both() -> None:
    assert drill_course().questions["guard-point"].kind == "spot"
    assert 'data-kind="spot"' in page("lesson-parts-of-the-guard")
    assert 'data-kind="triage"' in page("lesson-set-the-guard")

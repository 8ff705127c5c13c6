"""The glossary: whole drawings, pieces of drawings, and where the whole of a piece is to be found."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

from journeybook.content.loader import load_course
from journeybook.content.model import Course, Term
from journeybook.content.wording import Wording
from journeybook.pages.words_page import words_leaf

BASE = Path(__file__).parents[2] / "faults" / "base"
LOADED, _ = load_course(BASE, "pillar-drill", profile="uk")
assert LOADED is not None
COURSE = LOADED


def page(course: Course) -> str:
    return str(words_leaf(course, Wording(course)).body)


def with_terms(**parts: str) -> Course:
    """The course with words of one drawing: name -> the part, or nothing for the whole."""
    place = next(iter(COURSE.terms.values())).place
    terms = {
        name: Term(id=name, word=name, meaning="A part.", figure="guard-laid-out", part=part, place=place)
        for name, part in parts.items()
    }
    return replace(COURSE, terms=terms)


def test_a_word_that_names_a_part_shows_that_piece_and_no_more() -> None:
    shown = page(with_terms(sleeve="sleeve"))
    piece = re.findall(r'<div class="piece-drawing" role="img" aria-label="sleeve">(.*?)</div>', shown)
    assert len(piece) == 1
    assert '<rect class="ink tint-1"' in piece[0]
    assert 'id="' not in piece[0]
    assert 'class="plate"' not in shown


def test_a_piece_leads_to_the_lesson_that_shows_the_whole() -> None:
    assert '<a href="page:figure/guard-laid-out">Drawing: The guard, laid out</a>' in page(
        with_terms(sleeve="sleeve")
    )


def test_a_piece_leads_to_the_word_that_shows_the_whole() -> None:
    shown = page(with_terms(guard="", sleeve="sleeve"))
    assert 'id="words-figure-guard-laid-out"' in shown
    assert '<a href="page:words#figure-guard-laid-out">' in shown


def test_a_drawing_of_no_lesson_is_shown_whole_once() -> None:
    course = with_terms(knob="knob", sleeve="sleeve")
    bodiless = tuple(
        replace(module, lessons=tuple(replace(lesson, body=()) for lesson in module.lessons))
        for module in course.modules
    )
    shown = page(replace(course, modules=bodiless))
    assert shown.count('class="plate"') == 1
    assert shown.count('class="piece"') == 1
    assert '<a href="page:words#figure-guard-laid-out">' in shown


def test_a_piece_keeps_the_place_and_size_of_its_part() -> None:
    shown = page(with_terms(sleeve="sleeve"))
    assert '<svg class="figure" viewBox="131 61 98 128" width="122" height="160">' in shown


def test_two_pieces_of_one_drawing_share_no_id() -> None:
    shown = page(with_terms(knob="knob", collar="collar", sleeve="sleeve"))
    ids = re.findall(r'\bid="([^"]+)"', shown)
    assert len(ids) == len(set(ids))

"""The glossary: whole drawings, pieces of drawings, and where the whole of a piece is to be found."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

from journeybook.content.loader import load_course
from journeybook.content.model import Block, BlockKind, Course, Term
from journeybook.content.wording import Wording
from journeybook.pages.drawing_piece import piece_of
from journeybook.pages.words_page import words_leaf

BASE = Path(__file__).parents[2] / "faults" / "base"
LOADED, _ = load_course(BASE, "pillar-drill", profile="uk")
assert LOADED is not None
COURSE = LOADED
FIGURE = "guard-from-the-side"


def page(course: Course) -> str:
    return str(words_leaf(course, Wording(course)).body)


def with_terms(*, in_a_lesson: bool = True, **parts: str) -> Course:
    """The course with words of one drawing: name -> the part, or nothing for the whole."""
    place = next(iter(COURSE.terms.values())).place
    terms = {
        name: Term(id=name, word=name, meaning="A part.", figure=FIGURE, part=part, place=place)
        for name, part in parts.items()
    }
    first = COURSE.modules[0]
    block = Block(kind=BlockKind.FIGURE, text=FIGURE, place=place)
    lesson = replace(first.lessons[0], body=(block,) if in_a_lesson else ())
    return replace(COURSE, terms=terms, modules=(replace(first, lessons=(lesson,)),))


def test_a_word_that_names_a_part_shows_that_piece_and_no_more() -> None:
    shown = page(with_terms(sleeve="sleeve"))
    piece = re.findall(r'<div class="piece-drawing" role="img" aria-label="sleeve">(.*?)</div>', shown)
    assert len(piece) == 1
    assert '<rect class="ink tint-1"' in piece[0]
    assert 'id="' not in piece[0]
    assert 'class="plate"' not in shown


def test_a_piece_leads_to_the_lesson_that_shows_the_whole() -> None:
    assert '<a href="page:figure/guard-from-the-side">Drawing: The guard from the side</a>' in page(
        with_terms(sleeve="sleeve")
    )


def test_a_piece_leads_to_the_word_that_shows_the_whole() -> None:
    shown = page(with_terms(guard="", sleeve="sleeve"))
    assert 'id="words-figure-guard-from-the-side"' in shown
    assert '<a href="page:words#figure-guard-from-the-side">' in shown


def test_a_drawing_of_no_lesson_is_shown_whole_once() -> None:
    shown = page(with_terms(in_a_lesson=False, knob="knob", sleeve="sleeve"))
    assert shown.count('class="plate"') == 1
    assert shown.count('class="piece"') == 1
    assert '<a href="page:words#figure-guard-from-the-side">' in shown


def test_a_piece_keeps_the_place_and_size_of_its_part() -> None:
    shown = page(with_terms(sleeve="sleeve"))
    assert '<svg class="figure" viewBox="131 61 98 128" width="122" height="160">' in shown


def test_a_large_piece_is_made_smaller_only_as_far_as_its_lettering_can_be_read() -> None:
    svg = COURSE.figures[FIGURE].svg.replace(
        "</svg>", f'<g id="{FIGURE}-bar"><path class="ink" d="M10 10h300"/>{{}}</g></svg>'
    )
    widths = []
    for lettering in ("", '<text class="small" x="20" y="20">long</text>'):
        figure = replace(COURSE.figures[FIGURE], svg=svg.format(lettering))
        widths += re.findall(r'viewBox="[^"]*" width="(\d+)"', piece_of(figure, "bar", "words-bar"))
    assert widths == ["240", "302"]


def test_two_pieces_of_one_drawing_share_no_id() -> None:
    shown = page(with_terms(knob="knob", collar="collar", sleeve="sleeve"))
    ids = re.findall(r'\bid="([^"]+)"', shown)
    assert len(ids) == len(set(ids))

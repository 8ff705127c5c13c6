from __future__ import annotations

import re
from dataclasses import fields, is_dataclass, replace
from html.parser import HTMLParser
from typing import Any

import pytest
from drill_pages import words_in
from one_of_each import CHOICE, CHOICES, EVERY, MATCH, NUMBER, ORDER, option, written

from journeybook.content.model import Question
from journeybook.pages.question_html import SHEETS, one_order

HOSTILE = "<script>alert(1)</script>"
VOID = {"input", "br", "hr", "img"}


class Nesting(HTMLParser):
    """Follows the tags, and keeps every attribute."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.wrong: list[str] = []
        self.attributes: list[tuple[str, str | None]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.attributes += attrs
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if not self.open or self.open.pop() != tag:
            self.wrong.append(tag)


def read(html: str) -> Nesting:
    parser = Nesting()
    parser.feed(html)
    parser.close()
    return parser


def form_of(html: str) -> str:
    """What stands in the form: everything before the answer."""
    return html[: html.index('<details class="answer">')]


def answer_of(html: str) -> str:
    return html[html.index('<details class="answer">') :]


def ids_in_order(html: str, attribute: str) -> list[str]:
    return re.findall(rf'{attribute}="([^"]*)"', html)


def test_every_kind_of_the_model_can_be_written() -> None:
    kinds = {kind.kind for kind in Question.__subclasses__()}
    assert set(SHEETS) == kinds


@pytest.mark.parametrize("question", EVERY, ids=lambda question: question.kind)
def test_tags_are_closed_in_order(question: Question) -> None:
    parser = read(written(question))
    assert (parser.open, parser.wrong) == ([], [])


@pytest.mark.parametrize("question", EVERY, ids=lambda question: question.kind)
def test_every_id_starts_with_the_slug_and_comes_once(question: Question) -> None:
    ids = ids_in_order(written(question), r"\bid")
    assert ids
    assert all(id_.startswith(f"lesson-x-q-{question.id}") for id_ in ids)
    assert len(set(ids)) == len(ids)


def test_headings_in_the_variants_of_a_question_share_no_id() -> None:
    html = written(replace(NUMBER, ask="## Given\n\nTwo sleeves of {a} mm.", why="## Given\n\nTwice {a} mm."))
    ids = ids_in_order(html, r"<h\d id")
    assert len(ids) == 4
    assert len(set(ids_in_order(html, r"\bid"))) == len(ids_in_order(html, r"\bid"))


@pytest.mark.parametrize("question", EVERY, ids=lambda question: question.kind)
def test_labels_and_descriptions_point_at_ids_that_are_there(question: Question) -> None:
    html = written(question)
    ids = set(ids_in_order(html, r"\bid"))
    for attribute in ("aria-labelledby", "aria-describedby", "for"):
        assert set(ids_in_order(html, attribute)) <= ids


@pytest.mark.parametrize("question", EVERY, ids=lambda question: question.kind)
def test_nothing_runs_and_nothing_is_styled_in_place(question: Question) -> None:
    names = {name for name, _value in read(written(question)).attributes}
    assert "style" not in names
    assert not any(name.startswith("on") for name in names)


@pytest.mark.parametrize("question", EVERY, ids=lambda question: question.kind)
def test_without_scripts_no_button_is_shown_that_would_do_nothing(question: Question) -> None:
    assert "<button" not in written(question)


@pytest.mark.parametrize("question", EVERY, ids=lambda question: question.kind)
def test_no_link_stands_where_a_tap_answers(question: Question) -> None:
    asked = replace(question, ask="See {kit.none} and [the page](https://example.org).")
    assert "<a " not in form_of(written(asked))


def test_the_authors_signs_are_text_and_not_markup() -> None:
    assert "<em>cracked</em> &amp; the screw &lt; 3 mm" in written(CHOICE)


def test_an_option_named_like_markup_stays_text() -> None:
    options = (option("a", "<script>alert(1)</script>", "No."), option("b", "Tag it out."))
    assert "<script" not in written(replace(CHOICE, options=options))


def with_markup(thing: Any) -> Any:
    """The same with markup in every text of the author's, at any depth."""
    if isinstance(thing, tuple):
        return tuple(with_markup(each) for each in thing)
    if not is_dataclass(thing) or isinstance(thing, type):
        return thing
    changed = {field.name: with_markup(getattr(thing, field.name)) for field in fields(thing)}
    texts = {
        name: f"{changed[name]} {HOSTILE}" for name in ("ask", "why", "text", "reason") if name in changed
    }
    return replace(thing, **{**changed, **texts})


@pytest.mark.parametrize("question", EVERY, ids=lambda question: question.kind)
def test_markup_in_any_text_stays_text(question: Question) -> None:
    html = written(with_markup(question), HOSTILE)
    assert "<script" not in html
    assert html.count("&lt;script") >= 4


def test_a_choice_has_radio_buttons_valued_by_option() -> None:
    form = form_of(written(CHOICE))
    assert re.findall(r'<input type="radio" name="guard-01" value="(\w)">', form) == ["a", "b"]


def test_several_have_boxes() -> None:
    assert form_of(written(CHOICES)).count('type="checkbox"') == 3


def test_the_answer_says_of_each_option_whether_it_is_right_and_why_not() -> None:
    words = words_in(answer_of(written(CHOICES)))
    assert "Right A crack Not this Dust Wipe it off. Right A missing screw" in words


def test_the_form_does_not_say_which_option_is_right() -> None:
    form = form_of(written(CHOICES))
    assert "Wipe it off" not in form
    assert "data-right" not in form


def test_steps_are_listed_by_the_alphabet_and_not_in_the_authors_order() -> None:
    assert ids_in_order(written(ORDER), "data-step") == ["slide", "isolate", "loosen"]


def test_one_order_keeps_every_rule_and_stays_near_the_authors() -> None:
    assert one_order(ORDER) == ("isolate", "loosen", "slide")
    turned = replace(ORDER, steps=tuple(reversed(ORDER.steps)))
    assert one_order(turned) == ("isolate", "loosen", "slide")


def test_the_critical_rule_comes_first() -> None:
    answer = answer_of(written(ORDER))
    assert ids_in_order(answer, "data-first") == ["isolate", "loosen"]
    assert ids_in_order(answer, "data-then") == ["loosen slide", "slide"]
    assert "Critical Isolate before Loosen the collar; Adjust the sleeve It could start." in words_in(answer)


def test_answers_of_a_match_have_letters_by_the_alphabet() -> None:
    html = written(MATCH)
    listed = re.findall(r'<li data-answer="(\w+)"><span class="letter">(\w)</span>', html)
    assert listed == [("cools", "A"), ("covers", "B"), ("holds", "C")]


def test_each_item_of_a_match_is_a_group_of_all_letters() -> None:
    html = written(MATCH)
    assert re.findall(r'name="guard-04\.(\w+)" value="(\w+)"', html) == [
        (item, answer) for item in ("collar", "sleeve") for answer in ("cools", "covers", "holds")
    ]


def test_an_answer_that_goes_with_nothing_is_explained() -> None:
    assert "Goes with none Cools the bit Nothing here cools." in words_in(answer_of(written(MATCH)))


def test_every_variant_of_a_number_is_there_and_only_the_first_is_shown() -> None:
    form = form_of(written(NUMBER))
    assert re.findall(r'class="ask" data-variant="(\d)"( hidden)?>', form) == [("0", ""), ("1", " hidden")]
    assert "30 mm" in form
    assert "45 mm" in form


def test_the_right_number_stands_with_its_unit_and_what_else_is_accepted() -> None:
    words = words_in(answer_of(written(NUMBER)))
    assert "Right 60 mm accepted from 59 to 61" in words
    assert "Right 90 mm accepted from 89 to 91" in words


def test_a_slip_speaks_of_its_variants_own_numbers() -> None:
    answer = answer_of(written(NUMBER))
    assert re.findall(r'data-slip="0" data-variant="(\d)"', answer) == ["0", "1"]
    assert "one sleeve of 45 mm" in answer


def test_a_slip_that_says_the_same_for_all_is_written_once() -> None:
    slip = replace(NUMBER.slips[0], reason="That is one sleeve.")
    answer = answer_of(written(replace(NUMBER, slips=(slip,))))
    assert answer.count("That is one sleeve.") == 1


def test_units_are_buttons_by_the_alphabet_where_there_is_a_choice() -> None:
    assert re.findall(r'name="unit" value="(\w+)"', written(NUMBER)) == ["cm", "mm"]


def test_a_unit_that_goes_without_saying_stands_beside_the_box() -> None:
    html = written(replace(NUMBER, units=(), unit_needed=False))
    assert 'name="unit"' not in html
    assert '<p class="unit-fixed">mm</p>' in html


def test_a_number_without_a_unit_has_only_the_box() -> None:
    html = written(replace(NUMBER, unit="", units=(), unit_needed=False))
    assert "unit-fixed" not in html
    assert 'name="unit"' not in html


def test_the_source_is_named_and_linked() -> None:
    assert 'href="page:kit"' in answer_of(written(CHOICE))


def test_a_figure_stands_between_the_question_and_its_answers() -> None:
    form = form_of(written(replace(CHOICE, figure="sleeve")))
    assert form.index("</legend>") < form.index("[sleeve]") < form.index('class="options"')


def test_the_heading_stands_over_the_question() -> None:
    assert "Practice · question 1 of 5 Choose one" in words_in(written(CHOICE, "Practice · question 1 of 5"))

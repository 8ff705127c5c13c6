from __future__ import annotations

import json

from drill_pages import drill_course

from journeybook.content.model import Use
from journeybook.content.wording import Wording
from journeybook.pages.links import Targets
from journeybook.pages.search_index import one_file_search_data, search_entries, site_search_script


def test_lessons_words_values_and_sources_are_found_with_what_they_are() -> None:
    course = drill_course()
    kinds = {title: kind for title, kind, _, _ in search_entries(course, Wording(course))}
    assert kinds["Parts of the guard"] == "Operation 10, lesson"
    assert kinds["sleeve"] == "Word"
    assert kinds["Travel of the table"] == "Kit sheet"
    assert kinds["Rules of the fitting bay"] == "Source"


def test_the_text_has_values_in_place_of_references_and_the_words_of_figures() -> None:
    course = drill_course()
    text = next(
        entry[3] for entry in search_entries(course, Wording(course)) if entry[0] == "Parts of the guard"
    )
    assert "locked by a knob on the left of the collar" in text
    assert "{" not in text
    assert course.figures["guard-laid-out"].alt.split()[0] in text


def test_no_word_of_a_question_of_the_check_is_given_away() -> None:
    course = drill_course()
    everything = json.dumps(search_entries(course, Wording(course)))
    asked = [question.ask for question in course.questions.values() if question.use is Use.CHECK]
    assert asked
    assert [ask for ask in asked if ask in everything] == []


def test_the_site_gets_a_script_with_addresses_relative_to_the_search_page() -> None:
    course = drill_course()
    script = site_search_script(search_entries(course, Wording(course)), Targets(course))
    entries = json.loads(script.removeprefix("Search.receive(").removesuffix(");\n"))
    addresses = {entry[0]: entry[2] for entry in entries}
    assert addresses["Parts of the guard"] == "10-guard/parts-of-the-guard.html"
    assert addresses["sleeve"] == "words.html#words-sleeve"


def test_the_one_file_gets_fragments() -> None:
    course = drill_course()
    addresses = {
        entry[0]: entry[2]
        for entry in one_file_search_data(search_entries(course, Wording(course)), Targets(course))
    }
    assert addresses["Parts of the guard"] == "#lesson-parts-of-the-guard"
    assert addresses["sleeve"] == "#words-sleeve"

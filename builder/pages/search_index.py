"""What can be searched: the plain text of lessons, words, kit sheet and sources.

Questions stay out, those of the check above all: a search must not answer what a check asks.
"""

from __future__ import annotations

from collections.abc import Iterable

from journeybook.content.model import Block, BlockKind, Course, Lesson
from journeybook.content.wording import Wording
from journeybook.pages.filters import script_json
from journeybook.pages.links import Targets
from journeybook.pages.words_catalogue import load_catalogue

Entry = list[str]
"""``[title, what it is, page: link, text]``."""


def _text_of(block: Block, course: Course, wording: Wording) -> str:
    if block.kind is BlockKind.FIGURE:
        figure = course.figures[block.text]
        return f"{wording.plain(figure.title)}. {wording.plain(figure.alt)} {wording.plain(figure.caption)}"
    return " ".join(wording.plain(text) for text in (block.text, *block.steps) if text)


def lesson_entry(course: Course, wording: Wording, operation: int, lesson: Lesson) -> Entry:
    """The entry of one lesson; the text has single spaces only."""
    kind = load_catalogue(course.languages[0])[0].gettext("Operation %(operation)d, lesson")
    text = " ".join(_text_of(block, course, wording) for block in lesson.body)
    title = wording.plain(lesson.title)
    return _single_spaced([title, kind % {"operation": operation}, f"page:lesson/{lesson.id}", text])


def lookup_entries(course: Course, wording: Wording) -> list[Entry]:
    """One entry for each word, value of the kit sheet and source."""
    words = load_catalogue(course.languages[0])[0].gettext
    entries: list[Entry] = []
    for term in course.terms.values():
        meaning = wording.plain(term.meaning)
        entries.append([wording.plain(term.word), words("Word"), f"page:words#{term.id}", meaning])
    for value in course.kit.values.values():
        shown = f"{value.value} {value.unit}".strip()
        text = f"{shown}. {wording.plain(value.note)}" if value.note else shown
        entries.append([wording.plain(value.label), words("Kit sheet"), f"page:kit#{value.id}", text])
    for citation in course.sources.values():
        text = " ".join(part for part in (citation.clause, citation.year) if part)
        entries.append([citation.title, words("Source"), f"page:sources#{citation.id}", text])
    return [_single_spaced(entry) for entry in entries]


def search_entries(course: Course, wording: Wording) -> list[Entry]:
    """One entry for each lesson, word, value of the kit sheet and source."""
    lessons = [
        lesson_entry(course, wording, module.operation, lesson)
        for module in course.modules
        for lesson in module.lessons
    ]
    return lessons + lookup_entries(course, wording)


def _single_spaced(entry: Entry) -> Entry:
    return [" ".join(part.split()) for part in entry]


def site_search_script(entries: Iterable[Entry], targets: Targets) -> str:
    """``COURSE/search-data.js``: a classic script that hands the entries, with addresses, to the searcher."""
    path = targets.path("search")
    addressed = [
        [title, kind, targets.address_for_site(link, path=path, slug="search"), text]
        for title, kind, link, text in entries
    ]
    return f"Search.receive({script_json(addressed)});\n"


def one_file_search_data(entries: Iterable[Entry], targets: Targets) -> list[Entry]:
    """The entries with fragments as addresses, for ``<script type="application/json" id="search-data">``."""
    return [
        [title, kind, targets.address_for_one_file(link, slug="search"), text]
        for title, kind, link, text in entries
    ]

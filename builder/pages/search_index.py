"""What can be searched: the plain text of lessons, words, kit sheet and sources.

Questions stay out, those of the check above all: a search must not answer what a check asks.
"""

from __future__ import annotations

from journeybook.content.model import Block, BlockKind, Course
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


def search_entries(course: Course, wording: Wording) -> list[Entry]:
    """One entry for each lesson, word and value of the kit sheet; the text has single spaces only."""
    words = load_catalogue(course.languages[0])[0].gettext
    entries: list[Entry] = []
    for module in course.modules:
        for lesson in module.lessons:
            kind = words("Operation %(operation)d, lesson") % {"operation": module.operation}
            text = " ".join(_text_of(block, course, wording) for block in lesson.body)
            entries.append([wording.plain(lesson.title), kind, f"page:lesson/{lesson.id}", text])
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
    return [[" ".join(part.split()) for part in entry] for entry in entries]


def site_search_script(course: Course, wording: Wording) -> str:
    """``COURSE/search-data.js``: a classic script that hands the entries, with addresses, to the searcher."""
    targets = Targets(course)
    path = targets.path("search")
    entries = [
        [title, kind, targets.address_for_site(link, path=path, slug="search"), text]
        for title, kind, link, text in search_entries(course, wording)
    ]
    return f"Search.receive({script_json(entries)});\n"


def one_file_search_data(course: Course, wording: Wording) -> list[Entry]:
    """The entries with fragments as addresses, for ``<script type="application/json" id="search-data">``."""
    targets = Targets(course)
    return [
        [title, kind, targets.address_for_one_file(link, slug="search"), text]
        for title, kind, link, text in search_entries(course, wording)
    ]

"""What can be searched: the plain text of lessons, practicals, job cards, words, kit sheet and sources.

Questions and the drills they lead through stay out, those of the check above all: a search must not answer what a check
asks.
"""

from __future__ import annotations

from collections.abc import Iterable

from journeybook.content.model import AssemblyBench, Block, BlockKind, CardBlockKind, Course, Lesson
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
    if block.kind is BlockKind.BENCH:
        bench = course.benches[block.text]
        texts = [bench.title, bench.intro, bench.caution]
        if isinstance(bench, AssemblyBench):
            texts += [*(part.said for part in bench.parts), *(rule.reason for rule in bench.rules)]
        return " ".join(wording.plain(text) for text in texts if text)
    if block.kind is BlockKind.CALCULATOR:
        sheet = course.calculators[block.text]
        lines = (text for line in sheet.lines for text in (line.label, getattr(line, "note", "")))
        return " ".join(
            wording.plain(text) for text in (sheet.title, sheet.intro, sheet.caution, *lines) if text
        )
    return " ".join(wording.plain(text) for text in (block.text, *block.steps) if text)


def lesson_entry(course: Course, wording: Wording, operation: int, lesson: Lesson) -> Entry:
    """The entry of one lesson; the text has single spaces only."""
    kind = load_catalogue(course.languages[0])[0].gettext("Operation %(operation)d, lesson")
    text = " ".join(_text_of(block, course, wording) for block in lesson.body)
    title = wording.plain(lesson.title)
    return _single_spaced([title, kind % {"operation": operation}, f"page:lesson/{lesson.id}", text])


def _at_work_entries(course: Course, wording: Wording) -> list[Entry]:
    words = load_catalogue(course.languages[0])[0].gettext
    entries: list[Entry] = []
    for practical in course.practicals.values():
        texts = [practical.intro, *practical.safety, practical.stop]
        texts += [text for step in practical.steps for text in (step.text, step.look_for)]
        text = " ".join(wording.plain(each) for each in texts)
        link = f"page:practical/{practical.id}"
        entries.append([wording.plain(practical.title), words("Practical"), link, text])
    for card in course.job_cards.values():
        texts = [card.when, card.keep]
        for block in card.body:
            texts += [block.text, *block.lines] if block.kind is not CardBlockKind.FIGURE else []
            if block.table is not None:
                texts += [*block.table.columns, *(cell for row in block.table.rows for cell in row)]
        text = " ".join(wording.plain(each) for each in texts if each)
        entries.append([wording.plain(card.title), words("Job card"), f"page:job-card/{card.id}", text])
    return entries


def lookup_entries(course: Course, wording: Wording) -> list[Entry]:
    """One entry for each practical, job card, word, value of the kit sheet and source."""
    words = load_catalogue(course.languages[0])[0].gettext
    entries = _at_work_entries(course, wording)
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
    """One entry for each lesson, practical, job card, word, value of the kit sheet and source."""
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

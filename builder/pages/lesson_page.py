"""A lesson's page: its blocks, its practice, its sources, the way on."""

from __future__ import annotations

import itertools

from markupsafe import Markup

from journeybook.content.model import Block, BlockKind, Course, Lesson, Module
from journeybook.content.wording import Wording
from journeybook.pages.bench_desk import BenchDesk
from journeybook.pages.bench_html import SCRIPT, bench_html, benches_of_lesson
from journeybook.pages.calculator_html import SCRIPT as CALCULATOR_SCRIPT
from journeybook.pages.calculator_html import calculator_data, calculator_html, calculators_of_lesson
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.links import lesson_path, slug_of
from journeybook.pages.practice import practice_data, practice_figures, practice_html, practice_questions
from journeybook.pages.question_drill import drill_scripts
from journeybook.pages.turns import Turn


def _numbered(blocks: tuple[Block, ...]) -> list[tuple[Block, int]]:
    """Each block with its figure number; 0 for a block that is not a figure."""
    numbered = []
    figures = 0
    for block in blocks:
        figures += block.kind is BlockKind.FIGURE
        numbered.append((block, figures if block.kind is BlockKind.FIGURE else 0))
    return numbered


def lesson_leaf(
    course: Course, wording: Wording, module: Module, lesson: Lesson, turn: tuple[Turn, Turn | None]
) -> Leaf:
    """The leaf of one lesson."""
    language = course.languages[0]
    slug = slug_of("lesson", lesson.id)
    before, after = turn
    taken: set[str] = set()  # ids of headings, unique over all blocks of the lesson

    def write(text: str) -> Markup:
        return Markup(wording.block(text, slug, taken=taken))

    benches = BenchDesk(course=course, wording=wording, slug=slug, language=language)
    shown = benches_of_lesson(course, lesson)
    calculators = calculators_of_lesson(lesson)
    count = itertools.count(1)

    def show_bench(bench: str) -> Markup:
        return bench_html(benches, bench, place=str(next(count)))

    body = render(
        language,
        "lesson.html",
        course=course,
        wording=wording,
        write=write,
        module=module,
        lesson=lesson,
        position=module.lessons.index(lesson) + 1,
        slug=slug,
        numbered=_numbered(lesson.body),
        show_bench=show_bench,
        show_calculator=lambda calculator: calculator_html(course, wording, calculator, slug),
        ways_back=practice_figures(course, wording, lesson, slug).ways_back,
        practice=Markup(practice_html(course, wording, lesson, slug)) if lesson.practice else "",
        before=before,
        after=after,
    )
    return Leaf(
        path=lesson_path(course.id, module.operation, module.id, lesson.id),
        slug=slug,
        kind="lesson",
        title=wording.plain(lesson.title),
        course=course.id,
        body=body,
        data=(practice_data(course, lesson) if lesson.practice else {})
        | calculator_data(course, calculators),
        language=language,
        operation=module.operation,
        scripts=((SCRIPT,) if shown else ())
        + ((CALCULATOR_SCRIPT,) if calculators else ())
        + drill_scripts(practice_questions(course, lesson)),
    )

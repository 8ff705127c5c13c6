"""Benches as HTML: what stands on the page with scripts off, and the data by which the scripts bring it to life.

One maker a kind of bench, in ``MAKERS``; the scripts have their table in ``view/benches-on-page.js``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from markupsafe import Markup

from journeybook.content.model import BlockKind, Course, Lesson, Question, Trial
from journeybook.pages.assembly_bench_html import assembly_bench
from journeybook.pages.bench_desk import BenchDesk, BenchOnPage
from journeybook.pages.engine import render
from journeybook.pages.fan_bench_html import fan_bench
from journeybook.pages.filters import script_json

SCRIPT = "bench"
"""The script that a page with a bench loads besides."""

MAKERS: dict[str, Callable[..., BenchOnPage]] = {
    "fan": fan_bench,
    "assembly": assembly_bench,
}
"""Kind of bench -> what makes it: called with (desk, bench), and above a question with (desk, bench, trial)."""


def bench_html(desk: BenchDesk, bench_id: str, *, place: str, trial: Trial | None = None) -> Markup:
    """The section of one bench.

    ``place`` makes its ids different from those of the same bench elsewhere on the page; with a ``trial`` it is the
    one above a question: without title and intro, and set up as the trial says.
    """
    bench = desk.course.benches[bench_id]
    maker = MAKERS[bench.kind]
    shown = maker(desk, bench) if trial is None else maker(desk, bench, trial)
    return Markup(
        render(
            desk.language,
            "bench.html",
            bench=bench,
            slug=desk.slug,
            name=f"{desk.slug}-bench-{place}",
            shown=shown,
            trial=trial,
            course=desk.course,
            wording=desk.wording,
        )
    )


def bench_data(desk: BenchDesk) -> dict[str, object]:
    """``{id: {"kind", …}}`` of every bench of the course: what the scripts must know of each."""
    return {
        bench.id: {"kind": bench.kind, **MAKERS[bench.kind](desk, bench).data}
        for bench in desk.course.benches.values()
    }


def site_bench_script(desk: BenchDesk) -> str:
    """``COURSE/bench-data.js``: a classic script that hands the data to the benches of a page.

    A file of its own, so that a browser fetches a table once for all the lessons that show the bench.
    """
    return f"BenchesOnPage.receive({script_json(bench_data(desk))});\n"


def benches_of_lesson(course: Course, lesson: Lesson) -> list[str]:
    """Ids of the benches that a lesson shows: in its body, and above its practice questions."""
    known = course.questions
    shown = [block.text for block in lesson.body if block.kind is BlockKind.BENCH]
    return shown + benches_of_questions(known[id] for id in lesson.practice if id in known)


def benches_of_questions(questions: Iterable[Question]) -> list[str]:
    """Ids of the benches above questions."""
    return [question.trial.bench for question in questions if question.trial is not None]

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


def bench_data(desk: BenchDesk, bench_ids: Iterable[str]) -> dict[str, object]:
    """``{"benches": {id: {"kind", …}}}`` for a leaf's data; empty where there are none."""
    data: dict[str, object] = {}
    for bench_id in dict.fromkeys(bench_ids):
        bench = desk.course.benches[bench_id]
        data[bench_id] = {"kind": bench.kind, **MAKERS[bench.kind](desk, bench).data}
    return {"benches": data} if data else {}


def benches_of_lesson(course: Course, lesson: Lesson) -> list[str]:
    """Ids of the benches that a lesson shows: in its body, and above its practice questions."""
    known = course.questions
    shown = [block.text for block in lesson.body if block.kind is BlockKind.BENCH]
    return shown + benches_of_questions(known[id] for id in lesson.practice if id in known)


def benches_of_questions(questions: Iterable[Question]) -> list[str]:
    """Ids of the benches above questions."""
    return [question.trial.bench for question in questions if question.trial is not None]

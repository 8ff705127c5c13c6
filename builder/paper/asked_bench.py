"""A bench on paper: every way in which it can be set for a question, and what can be read off it there.

On a screen somebody moves the controls; on paper each place of them has a row, so that whoever can read the bench can
read the table, and nothing has to be worked out between rows.
"""

from __future__ import annotations

from itertools import product

from journeybook.content.bench_of import fan_of
from journeybook.content.model import Trial
from journeybook.content.wording import NO_BREAK
from journeybook.pages.bench_desk import BenchDesk
from journeybook.pages.fan_bench_html import alarm_names, place_words, row_at, standing, start_of
from journeybook.paper.asked import BenchColumn, BenchTable
from journeybook.paper.imprint import CourseInPrint
from journeybook.paper.rich_text import blocks_of

NONE = "–"
MINUS = "\N{MINUS SIGN}"


def bench_table(printed: CourseInPrint, trial: Trial, *, numbered: bool) -> BenchTable:
    """The table of the bench above a question; with ``numbered`` each place bears the number that answers it."""
    wording, say = printed.wording, printed.say
    desk = BenchDesk(course=printed.course, wording=wording, slug="", language=printed.language)
    worked = fan_of(printed.course, trial.bench)
    bench, table, start = worked.bench, worked.table, start_of(worked, trial)
    known = {one.control.of: one for one in worked.controls}
    moved = [known[name] for name in trial.moves]
    alarms = {name: words for name, words in alarm_names(desk, bench).items() if name in table.columns}
    rows: list[list[str]] = []
    for places in product(*(range(len(one.places)) for one in moved)):
        at = {**start, **{one.control.of: place for one, place in zip(moved, places, strict=True)}}
        row = row_at(worked, table, at, "", is_start=False)
        sounding = ", ".join(alarms[alarm] for alarm in row.alarms) or NONE
        named = [
            (f"{place + 1} · " if numbered else "") + _held_together(place_words(desk, one, place))
            for one, place in zip(moved, places, strict=True)
        ]
        rows.append([*named, *row.cells, *([sounding] if alarms else [])])
    columns = [BenchColumn(words=wording.plain(one.label), unit=one.unit) for one in bench.readings]
    if alarms:
        columns.append(BenchColumn(words=say("Alarm"), numbers=False))
    return BenchTable(
        title=wording.plain(bench.title),
        example=bench.example,
        standing=[
            (label, _held_together(place) or say("not shown"))
            for label, place in standing(desk, worked, trial)
        ],
        controls=[wording.plain(one.control.label) for one in moved],
        columns=columns,
        rows=rows,
        caution=blocks_of(wording, bench.caution) if bench.caution else [],
    )


def _held_together(words: str) -> str:
    """A number and its unit stay on one line."""
    return words.replace(" ", NO_BREAK) if words[:1].isdigit() or words[:1] == MINUS else words


def controls_of(printed: CourseInPrint, trial: Trial) -> list[tuple[str, int]]:
    """Each control that is set, as it is called, and how many places it has; in the order in which they are keyed."""
    known = {one.control.of: one for one in fan_of(printed.course, trial.bench).controls}
    return [
        (printed.wording.plain(known[name].control.label), len(known[name].places)) for name in trial.moves
    ]

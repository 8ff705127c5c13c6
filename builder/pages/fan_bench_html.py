"""A bench of kind ``fan`` on a page: the drawing, what can be read off in tables, and the numbers for its script.

With scripts off the drawing shows the path of the air, and a table for each control shows what it does while the others
stay where they are. The script adds controls and instruments (``view/fan-bench.js``).
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from journeybook.benches.interpolation import slimmed
from journeybook.benches.table import Table
from journeybook.content.arithmetic import decimal_text
from journeybook.content.bench_goals import stands_at
from journeybook.content.bench_of import fan_of
from journeybook.content.fan_values import ALARMS, ShownControl, WorkedOut
from journeybook.content.model import FanBench, Trial
from journeybook.pages.bench_desk import BenchDesk, BenchOnPage
from journeybook.pages.engine import render
from journeybook.pages.words_catalogue import load_catalogue

_MOST_ROWS = 6
_MINUS = "\N{MINUS SIGN}"


@dataclass(frozen=True, kw_only=True)
class Shown:
    """A reading and what it shows at the start."""

    of: str
    label: str
    unit: str
    value: str


@dataclass(frozen=True, kw_only=True)
class Row:
    """One place of a control, and what can be read off there."""

    place: str
    cells: tuple[str, ...]
    alarms: tuple[str, ...]
    """Ids of the alarms that sound."""
    is_start: bool


@dataclass(frozen=True, kw_only=True)
class ControlTable:
    """What one control does while the others stand still."""

    label: str
    rows: tuple[Row, ...]


def fan_bench(desk: BenchDesk, bench: FanBench, trial: Trial | None = None) -> BenchOnPage:
    """The drawing, the tables and the numbers."""
    worked = fan_of(desk.course, bench.id)
    start = row_at(worked, worked.table, start_of(worked, trial), "", is_start=True)
    body = render(
        desk.language,
        "bench-fan.html",
        bench=bench,
        trial=trial,
        names=part_names(desk, bench),
        readings=[
            Shown(of=one.of, label=desk.wording.plain(one.label), unit=one.unit, value=cell)
            for one, cell in zip(bench.readings, start.cells, strict=True)
        ],
        alarms=[
            (alarm, words, alarm in start.alarms)
            for alarm, words in alarm_names(desk, bench).items()
            if alarm in worked.table.columns
        ],
        alarm_names=alarm_names(desk, bench),
        tables=_tables(desk, worked, trial),
        standing=[] if trial is None else standing(desk, worked, trial),
    )
    if trial is None:
        return BenchOnPage(body=Markup(body), data=_data(desk, worked))
    set_up = {"start": stands_at(worked, trial), "moves": trial.moves, "hides": trial.hides}
    return BenchOnPage(body=Markup(body), trial=json.dumps(set_up, separators=(",", ":")))


def part_names(desk: BenchDesk, bench: FanBench) -> dict[str, str]:
    """Part of the path -> what it is called: the author's word, or ours."""
    say = load_catalogue(desk.language)[0].gettext
    ours = {
        "inlet": say("Inlet"),
        "filter": say("Filter"),
        "fan": say("Fan"),
        "duct": say("Duct"),
        "outlet": say("Outlet"),
    }
    return {part: getattr(bench.parts, part) or word for part, word in ours.items()}


def alarm_names(desk: BenchDesk, bench: FanBench) -> dict[str, str]:
    """Alarm -> what it is called: the author's word, or ours."""
    say = load_catalogue(desk.language)[0].gettext
    own = desk.wording.plain(bench.alarm_name) if bench.alarm_name else ""
    return {"low-flow": own or say("Low-flow alarm"), "low-battery": say("Low-battery alarm")}


def place_words(desk: BenchDesk, control: ShownControl, place: int) -> str:
    """What a place is called: the author's label, or the value with its unit."""
    one = control.places[place]
    if not control.is_range:
        return desk.wording.plain(one.label)
    return f"{_number(decimal_text(one.value))} {control.control.unit}".strip()


def reading_words(value: int, places: int) -> str:
    """An integer of the table as a number."""
    if places == 0:
        return _number(str(value))
    digits = str(abs(value)).rjust(places + 1, "0")
    return _number(f"{'-' if value < 0 else ''}{digits[:-places]}.{digits[-places:]}")


def _number(text: str) -> str:
    return text.replace("-", _MINUS)


def start_of(worked: WorkedOut, trial: Trial | None) -> dict[str, int]:
    """Control -> its place at the start."""
    if trial is not None:
        return stands_at(worked, trial)
    return {control.control.of: control.start for control in worked.controls}


def standing(desk: BenchDesk, worked: WorkedOut, trial: Trial) -> list[tuple[str, str]]:
    """What stands still in a trial: label, and place, which is empty where it is hidden."""
    start = start_of(worked, trial)
    return [
        (
            desk.wording.plain(one.control.label),
            "" if one.control.of in trial.hides else place_words(desk, one, start[one.control.of]),
        )
        for one in worked.controls
        if one.control.of not in trial.moves
    ]


def _tables(desk: BenchDesk, worked: WorkedOut, trial: Trial | None) -> list[ControlTable]:
    """A table for each control that can be moved; where none can, one row of how things stand."""
    start = start_of(worked, trial)
    table = worked.table
    moved = [one for one in worked.controls if trial is None or one.control.of in trial.moves]
    found = [
        ControlTable(
            label=desk.wording.plain(one.control.label),
            rows=tuple(
                row_at(
                    worked,
                    table,
                    {**start, one.control.of: place},
                    place_words(desk, one, place),
                    is_start=place == start[one.control.of],
                )
                for place in _some(len(one.places), start[one.control.of])
            ),
        )
        for one in moved
    ]
    return found or [ControlTable(label="", rows=(row_at(worked, table, start, "", is_start=True),))]


def _some(count: int, start: int) -> list[int]:
    """Every place, or evenly spread ones where there are many; the ends and the start always."""
    every = -(-count // _MOST_ROWS)
    return sorted({*range(0, count, every), count - 1, start})


def row_at(worked: WorkedOut, table: Table, at: Mapping[str, int], place: str, *, is_start: bool) -> Row:
    """What can be read off where every control stands at its place in ``at``."""
    index = table.index(at)
    shown = worked.readings[: len(worked.bench.readings)]
    return Row(
        place=place,
        cells=tuple(reading_words(table.columns[one.id][index], one.places) for one in shown),
        alarms=tuple(alarm for alarm in ALARMS if table.columns.get(alarm, (0,) * (index + 1))[index]),
        is_start=is_start,
    )


def _data(desk: BenchDesk, worked: WorkedOut) -> dict[str, object]:
    """What ``pure/bench-table.js`` and ``view/fan-bench.js`` read."""
    table, bench = worked.table, worked.bench
    counts = [len(axis.values) for axis in table.axes]
    labels = {one.of: desk.wording.plain(one.label) for one in bench.readings}
    columns: dict[str, object] = {}
    for reading in worked.readings:
        column = slimmed(counts, table.columns[reading.id])
        columns[reading.id] = {"along": list(column.along), "steps": column.steps}
    return {
        "controls": [
            {
                "of": one.control.of,
                "label": desk.wording.plain(one.control.label),
                "start": one.start,
                "places": [place_words(desk, one, place) for place in range(len(one.places))],
                "share": _shares(one),
            }
            for one in worked.controls
        ],
        "readings": [
            {
                "of": reading.id,
                "label": labels[reading.id],
                "unit": worked.units[reading.id],
                "places": reading.places,
            }
            for reading in worked.readings
            if reading.id in labels
        ],
        "decimals": {reading.id: reading.places for reading in worked.readings},
        "scale": _scale(worked),
        "columns": columns,
    }


def _shares(control: ShownControl) -> list[int]:
    """Each place's value between the least and the most of a drawing, in percent: how full, how open, how charged."""
    values = [place.value for place in control.places]
    if control.control.of in ("load", "opening", "charge"):
        return [round(value) for value in values]
    low, high = min(values), max(values)
    return [round(100 * (value - low) / (high - low)) for value in values]


def _scale(worked: WorkedOut) -> dict[str, int]:
    """Integers that the drawing needs: the largest flow on it, and the flow of the alarm."""
    flows = worked.table.columns["flow"]
    places = next(one.places for one in worked.readings if one.id == "flow")
    shown = worked.table.columns.get("shown", (0,))
    alarm = worked.unit.alarm_below * worked.scale("flow") * 10**places
    return {"flow": max(*flows, 1), "shown": max(*shown, 1), "alarm": round(alarm)}

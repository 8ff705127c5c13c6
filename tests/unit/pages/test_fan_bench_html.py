"""A fan bench on a page: what is read with scripts off, and the numbers that its script gets."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from journeybook.benches.interpolation import Column
from journeybook.content.bench_of import fan_of
from journeybook.content.loader import load_course
from journeybook.content.model import Course, FanBench, SettingQuestion, Stand, Trial
from journeybook.content.wording import Wording
from journeybook.pages.bench_desk import BenchDesk
from journeybook.pages.bench_html import bench_data, bench_html
from journeybook.pages.fan_bench_html import reading_words
from journeybook.pages.setting_words import right_settings

BASE = Path(__file__).parents[2] / "faults" / "base"


@cache
def course() -> Course:
    loaded, problems = load_course(BASE, "pillar-drill", profile="uk")
    assert loaded is not None, problems
    return loaded


def desk(of: Course | None = None) -> BenchDesk:
    made = of or course()
    return BenchDesk(course=made, wording=Wording(made), slug="lesson-set", language="en")


def data() -> dict[str, Any]:
    found: Any = bench_data(desk())["extraction"]
    return dict(found)


def question() -> SettingQuestion:
    found = course().questions["guard-bag"]
    assert isinstance(found, SettingQuestion)
    return found


def test_each_control_has_a_table_with_its_places_and_the_start_marked() -> None:
    html = bench_html(desk(), "extraction", place="1")
    assert html.count("<table") == 3
    assert '<tr class="is-start"><th scope="row">0 %</th><td>709</td>' in html
    assert '<th scope="row">half open</th>' in html


def test_an_alarm_that_sounds_is_named_in_its_row() -> None:
    html = bench_html(desk(), "extraction", place="1")
    assert '<th scope="row">100 %</th><td>479</td><td>902</td>' in html
    row = html.split('<th scope="row">100 %</th>')[1].split("</tr>")[0]
    assert "Lamp: too little is taken" in row


def test_the_numbers_of_a_page_stand_there_once_and_give_the_table_back() -> None:
    found = data()
    worked = fan_of(course(), "extraction")
    counts = [len(control["places"]) for control in found["controls"]]
    for name, written in found["columns"].items():
        column = Column.from_steps(
            written["along"], [counts[axis] for axis in written["along"]], written["steps"]
        )
        values = [column.at(list(places.values())) for places in worked.table.everywhere()]
        assert values == list(worked.table.columns[name])


def test_a_trial_shows_where_its_controls_stand_and_hides_what_it_hides() -> None:
    trial = Trial(
        bench="extraction",
        start=Stand(load="80", height="hill"),
        moves=("opening",),
        hides=("load",),
        place=question().place,
    )
    html = bench_html(desk(), "extraction", place="q-x", trial=trial)
    assert html.count("<table") == 1
    assert "<dt>Dust in the bag</dt><dd>not shown</dd>" in html
    assert "<dt>Where it stands</dt><dd>at the hill works</dd>" in html
    assert "80 %" not in html
    written = str(html).split('data-trial="')[1].split('"')[0].replace("&#34;", '"')
    assert json.loads(written) == {
        "start": {"load": 4, "opening": 2, "height": 1},
        "moves": ["opening"],
        "hides": ["load"],
    }


def test_a_trial_in_which_nothing_moves_has_one_row() -> None:
    html = bench_html(
        desk(), "extraction", place="q-x", trial=Trial(bench="extraction", place=question().place)
    )
    assert html.count("<tr") == 2


@pytest.mark.parametrize(
    ("value", "places", "words"),
    [(175, 0, "175"), (-5, 0, "−5"), (67, 1, "6.7"), (5, 1, "0.5"), (-3, 2, "−0.03"), (0, 1, "0.0")],
)
def test_a_number_is_written_with_its_decimals_and_a_real_minus(value: int, places: int, words: str) -> None:
    assert reading_words(value, places) == words


def test_markup_in_a_benchs_words_is_shown_as_it_is_typed() -> None:
    bench = course().benches["extraction"]
    assert isinstance(bench, FanBench)
    control = replace(bench.controls[0], label="a < b & <i>c</i>")
    odd = replace(bench, title="Fan <b>one</b>", controls=(control, *bench.controls[1:]))
    html = bench_html(desk(replace(course(), benches={"extraction": odd})), "extraction", place="1")
    assert "<i>" not in html
    assert "<b>" not in html
    assert "a &lt; b &amp; &lt;i&gt;c&lt;/i&gt;" in html


def test_what_is_right_is_said_in_words_with_neighbours_as_a_span() -> None:
    assert right_settings(desk(), question()) == ["Dust in the bag: 80 %"]
    any_load = replace(question(), first="")
    assert right_settings(desk(), any_load) == ["Dust in the bag: 80 % to 100 %"]
    trial = replace(any_load.trial, moves=("opening", "load"))  # type: ignore[type-var]
    assert right_settings(desk(), replace(any_load, trial=trial)) == [
        "Gate: shut; Dust in the bag: 0 % to 100 %",
        "Gate: half open; Dust in the bag: 0 % to 100 %",
        "Gate: open; Dust in the bag: 80 % to 100 %",
    ]

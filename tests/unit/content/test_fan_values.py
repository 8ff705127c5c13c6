"""A fan bench's texts become numbers: from the sheets, in the units that its author writes."""

from __future__ import annotations

from pathlib import Path

import pint
import pytest

from journeybook.benches.fan_unit import Circumstances
from journeybook.content.bench_of import fan_of
from journeybook.content.fan_numbers import worked_out
from journeybook.content.fan_values import WorkedOut
from journeybook.content.file_read import read_file
from journeybook.content.formats.benches import BENCH
from journeybook.content.loader import load_course
from journeybook.content.model import FanBench, Value
from journeybook.diagnostics.problem import Place

ROOT = Path(__file__).parents[3]
HOOD = """
kind: fan
title: "The mouth"
caution: "A model with invented values."
source: [kit]
flow-unit: m3/h
fan:
  - {flow: "0", pressure: "1200"}
  - {flow: "400", pressure: "1000"}
  - {flow: "1000", pressure: "0"}
filter: {clean: "0.3", full: "1.5"}
duct: "0.0008"
efficiency: "45"
standby: "2"
alarm-below: "{kit.least.number}"
fixed: {setting: "2000"}
controls:
  - {of: load, label: "Dust", unit: "%", range: {from: "100", to: "0", step: "20"}, start: "60"}
readings:
  - {of: flow, label: "Taken", unit: m3/h, places: 1}
  - {of: pressure, label: "Pressure", unit: hPa, places: 2}
"""


def _value(text: str) -> dict[str, dict[str, Value]]:
    place = Place(file="kit.yml")
    return {"kit": {"least": Value(id="least", label="Least", value=text, place=place)}, "profile": {}}


def _bench(text: str = HOOD) -> FanBench:
    file = read_file(text.encode(), "benches/mouth.yml", BENCH, {"bench": {"id": "mouth"}})
    assert isinstance(file.value, FanBench), file.problems
    return file.value


def _worked(text: str = HOOD, least: str = "540") -> WorkedOut:
    found = worked_out(_bench(text), _value(least))
    assert isinstance(found, WorkedOut), found
    return found


def test_a_value_of_the_kit_sheet_is_used_in_the_benchs_own_unit_of_flow() -> None:
    assert _worked(least="540").unit.alarm_below == pytest.approx(540 * 1000 / 60)


def test_another_value_on_the_kit_sheet_makes_another_table() -> None:
    low, high = _worked(least="100").table, _worked(least="900").table
    assert sum(low.columns["low-flow"]) == 0
    assert sum(high.columns["low-flow"]) == high.size


def test_what_is_described_in_cubic_metres_an_hour_is_what_pint_makes_of_it() -> None:
    units = pint.UnitRegistry()
    unit = _worked().unit
    flow = (400 * units.meter**3 / units.hour).to("liter/minute").magnitude
    assert unit.fan.points[1][0] == pytest.approx(flow)
    resistance = (0.3 * units.pascal / (units.meter**3 / units.hour)).to("pascal*minute/liter").magnitude
    assert unit.clean_filter == pytest.approx(resistance)
    turbulent = (
        (0.0008 * units.pascal / (units.meter**3 / units.hour) ** 2).to("pascal*minute**2/liter**2").magnitude
    )
    assert unit.duct == pytest.approx(turbulent)


def test_a_reading_is_shown_in_the_unit_its_author_asks_for() -> None:
    worked = _worked()
    now = Circumstances(setting=2000 / 0.06, load=60, opening=100, temperature=20, height=0, charge=100)
    exact = worked.unit.at(now)
    at = {"load": 2}
    assert worked.table.value("flow", at) == round(exact["flow"] * 0.06 * 10)
    assert worked.table.value("pressure", at) == round(exact["pressure"] / 100 * 100)


def test_a_range_may_run_downwards_and_starts_where_its_author_says() -> None:
    (load,) = _worked().controls
    assert [place.id for place in load.places] == ["100", "80", "60", "40", "20", "0"]
    assert load.start == 2


def test_the_affinity_laws_hold_for_a_described_fan_at_a_place_of_its_controller() -> None:
    # Without a filter all that resists is turbulent, so pressure goes with flow squared (fan handbooks; from memory).
    text = HOOD.replace('{clean: "0.3", full: "1.5"}', '{clean: "0", full: "0"}').replace(
        'fixed: {setting: "2000"}', ""
    )
    text = text.replace(
        "controls:\n",
        'controls:\n  - {of: setting, label: "Set", range: {from: "100", to: "500", step: "100"}, start: "100"}\n',
    )
    worked = _worked(text)
    exact = [worked.exactly({"setting": flow / 0.06, "load": 0.0}) for flow in (100, 200, 400)]
    assert exact[1]["speed"] == pytest.approx(2 * exact[0]["speed"])
    assert exact[2]["speed"] == pytest.approx(4 * exact[0]["speed"])
    assert exact[2]["pressure"] == pytest.approx(16 * exact[0]["pressure"])


def test_the_demos_bench_fits_its_kit_sheet() -> None:
    course, problems = load_course(ROOT, "powered-respirator", profile="us")
    assert course is not None, problems
    worked = fan_of(course, "air-unit")
    start = {one.control.of: one.start for one in worked.controls}
    table = worked.table
    normal, high = (start | {"setting": place} for place in (0, 1))
    assert table.value("flow", normal) == int(course.kit.values["setting-normal"].value)
    assert table.value("flow", high) == int(course.kit.values["setting-high"].value)
    least = int(course.kit.values["minimum-flow"].value)
    for places in table.everywhere():
        if table.value("flow", places) < least - 1:
            assert table.value("low-flow", places) == 1
        if table.value("flow", places) > least:
            assert table.value("low-flow", places) == 0
    # The alarm comes with a share of the charge left; down to nothing it would be the kit sheet's hours.
    left = float(course.kit.values["battery-left-at-alarm"].value) / 100
    hours = table.value("minutes", normal) / 10 / (1 - left)
    assert hours == pytest.approx(float(course.kit.values["battery-run-time"].value), abs=0.1)


@pytest.mark.parametrize(
    ("unit", "places"), [("W", 0), ("kW", 2)], ids=["hundreds of watts", "tenths of a kilowatt"]
)
def test_a_reading_without_places_shows_two_figures_of_its_largest_value(unit: str, places: int) -> None:
    worked = _worked(HOOD + f'  - {{of: power, label: "Power", unit: {unit}}}\n')
    assert worked.readings[2].places == places
    most = max(worked.table.columns["power"])
    assert 10 <= most < 1000


def test_places_that_are_named_stay() -> None:
    worked = _worked(HOOD + '  - {of: power, label: "Power", unit: kW, places: 0}\n')
    assert worked.readings[2].places == 0

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from journeybook.content.bench_of import fan_of
from journeybook.content.bench_readings import ReadingFlaw, read_off, readings_of
from journeybook.content.loader import load_course
from journeybook.content.model import BenchReading, FanBench, NumberQuestion, Stand
from journeybook.content.number_values import right_values
from journeybook.marking.keys import lower

COURSE = load_course(Path(__file__).parents[2] / "faults" / "base", "pillar-drill", profile="uk")[0]
assert COURSE is not None
SHEETS = {"kit": COURSE.kit.values, "profile": COURSE.profile.values}
HOOD = COURSE.questions["gate-half"]
assert isinstance(HOOD, NumberQuestion)
BENCH = COURSE.benches["extraction"]


def reading(of: str = "flow", bench: str = "extraction", **at: str) -> BenchReading:
    return BenchReading(bench=bench, of=of, at=Stand(**at), place=BENCH.place)


def off(one: BenchReading) -> Fraction | ReadingFlaw | None:
    assert COURSE is not None
    return read_off(one, COURSE.benches, SHEETS)


def test_what_is_read_is_what_the_table_of_the_page_holds() -> None:
    assert COURSE is not None
    table = fan_of(COURSE, "extraction").table
    assert off(reading(load="40", opening="half", height="hill")) == table.value(
        "flow", {"load": 2, "opening": 1, "height": 1}
    )


def test_a_control_that_is_not_named_stands_where_the_bench_begins() -> None:
    assert off(reading()) == off(reading(load="0", opening="open", height="quay"))


@pytest.mark.parametrize(
    ("one", "key"),
    [
        pytest.param(reading(load="45"), "at", id="a place between two"),
        pytest.param(reading(charge="50"), "at", id="a control that the bench lacks"),
        pytest.param(reading(of="minutes"), "of", id="a reading that the bench lacks"),
        pytest.param(reading(of="low-flow"), "of", id="a lamp"),
        pytest.param(reading(bench="guard-on"), "bench", id="a bench without numbers"),
    ],
)
def test_what_cannot_be_read_says_where_the_cause_stands(one: BenchReading, key: str) -> None:
    found = off(one)
    assert isinstance(found, ReadingFlaw)
    assert found.key == key


def test_a_bench_that_is_not_there_is_told_elsewhere() -> None:
    assert off(reading(bench="extractor")) is None


def test_the_right_answer_changes_with_the_bench() -> None:
    assert COURSE is not None
    before = right_values(HOOD, SHEETS, readings_of(HOOD, COURSE.benches, SHEETS))
    assert isinstance(BENCH, FanBench)
    wider = {"extraction": replace(BENCH, duct="0.0004")}
    assert right_values(HOOD, SHEETS, readings_of(HOOD, wider, SHEETS)) != before


def test_marking_works_with_what_is_read() -> None:
    assert COURSE is not None
    half, whole = (off(reading(load="40", opening=place)) for place in ("half", "open"))
    assert isinstance(half, Fraction)
    assert isinstance(whole, Fraction)
    (variant,) = lower(HOOD, COURSE)["variants"]  # type: ignore[misc]
    assert variant["low"] == str(whole - half - 1)  # type: ignore[index,call-overload]


def test_what_the_loader_refuses_has_no_answer() -> None:
    assert COURSE is not None
    spoilt = replace(HOOD, reads={"half": reading(load="45")})
    with pytest.raises(ValueError, match=r"gate-half: half: .* no place of `load` called `45`"):
        readings_of(spoilt, COURSE.benches, SHEETS)

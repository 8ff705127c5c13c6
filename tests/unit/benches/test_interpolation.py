"""What a page reads off a table: exact at its places, and how far off between them."""

from __future__ import annotations

from itertools import product
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journeybook.benches.interpolation import Column, slimmed
from journeybook.content.bench_of import fan_of
from journeybook.content.fan_values import WorkedOut
from journeybook.content.loader import load_course

ROOT = Path(__file__).parents[3]


def _bench(root: Path, course_id: str, profile: str, bench: str) -> WorkedOut:
    course, problems = load_course(root, course_id, profile=profile)
    assert course is not None, problems
    return fan_of(course, bench)


AIR_UNIT = _bench(ROOT, "powered-respirator", "us", "air-unit")
EXTRACTION = _bench(ROOT / "tests" / "faults" / "base", "pillar-drill", "uk", "extraction")


def _columns(worked: WorkedOut) -> dict[str, Column]:
    table = worked.table
    counts = [len(axis.values) for axis in table.axes]
    return {reading.id: slimmed(counts, table.columns[reading.id]) for reading in worked.readings}


@pytest.mark.parametrize("worked", [AIR_UNIT, EXTRACTION], ids=["air-unit", "extraction"])
def test_a_column_says_at_every_place_what_the_table_says(worked: WorkedOut) -> None:
    table = worked.table
    for name, column in _columns(worked).items():
        again = Column.from_steps(column.along, column.counts, column.steps)
        found = [again.at(list(places.values())) for places in table.everywhere()]
        assert found == list(table.columns[name])


def test_what_a_reading_does_not_depend_on_is_left_out() -> None:
    columns = _columns(AIR_UNIT)
    controls = [axis.id for axis in AIR_UNIT.table.axes]
    assert {controls[axis] for axis in columns["flow"].along} == {"setting", "load", "opening", "temperature"}
    assert {controls[axis] for axis in columns["low-battery"].along} == {"charge"}
    assert len(columns["low-battery"].values) == 5


# While a slider glides from one place to the next, numbers between are seen for a third of a second. DEVELOPERS.md
# says how far off these can be, in L/min, percent of full speed and hours.
@pytest.mark.parametrize(
    ("control", "bounds"),
    [
        ("load", {"flow": 1.2, "shown": 1.2, "speed": 0.6, "minutes": 0.1}),
        ("temperature", {"flow": 1.2, "shown": 1.2, "speed": 0.6, "minutes": 0.1}),
        ("opening", {"flow": 21, "shown": 21, "speed": 5, "minutes": 0.7}),
    ],
)
def test_half_way_to_the_next_place_the_reading_is_as_near_the_exact_one_as_the_handbook_says(
    control: str, bounds: dict[str, float]
) -> None:
    axes, columns = AIR_UNIT.table.axes, _columns(AIR_UNIT)
    moved = next(number for number, axis in enumerate(axes) if axis.id == control)
    for places in product(*(range(len(axis.values) - (number == moved)) for number, axis in enumerate(axes))):
        values = {axis.id: axis.values[place] for axis, place in zip(axes, places, strict=True)}
        values[control] = (axes[moved].values[places[moved]] + axes[moved].values[places[moved] + 1]) / 2
        if values["charge"] != 100:
            continue
        exact = AIR_UNIT.exactly(values)
        between = [place + 0.5 * (number == moved) for number, place in enumerate(places)]
        for reading in AIR_UNIT.readings:
            if reading.id in bounds:
                shown = columns[reading.id].at(between) / 10**reading.places
                assert abs(shown - exact[reading.id]) <= bounds[reading.id], (reading.id, values)


@given(
    counts=st.lists(st.integers(1, 4), min_size=1, max_size=4),
    data=st.data(),
)
def test_between_its_places_a_reading_never_leaves_what_the_table_holds(
    counts: list[int], data: st.DataObject
) -> None:
    size = 1
    for count in counts:
        size *= count
    values = data.draw(st.lists(st.integers(-1000, 1000), min_size=size, max_size=size))
    places = [data.draw(st.floats(-1, count)) for count in counts]
    found = slimmed(counts, values).at(places)
    assert min(values) - 1e-6 <= found <= max(values) + 1e-6

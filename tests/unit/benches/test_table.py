from __future__ import annotations

import pytest

from journeybook.benches.table import Axis, Reading, scaled, tabulate

TABLE = tabulate(
    (Axis(id="load", values=(0.0, 50.0, 100.0)), Axis(id="heat", values=(10.0, 20.0))),
    (Reading(id="sum", places=1), Reading(id="heat", places=0)),
    lambda at: {"sum": at["load"] + at["heat"] / 3, "heat": at["heat"]},
)


def test_the_last_control_runs_fastest() -> None:
    assert TABLE.columns["heat"] == (10, 20, 10, 20, 10, 20)


def test_a_value_is_an_integer_of_its_last_place() -> None:
    assert TABLE.columns["sum"] == (33, 67, 533, 567, 1033, 1067)


def test_a_value_is_found_by_the_places_of_the_controls_whatever_their_order() -> None:
    assert TABLE.value("sum", {"heat": 1, "load": 1}) == 567
    assert [TABLE.index(places) for places in TABLE.everywhere()] == list(range(TABLE.size))


def test_a_place_beyond_the_end_is_refused() -> None:
    with pytest.raises(IndexError, match="load has no place 3"):
        TABLE.index({"load": 3, "heat": 0})


@pytest.mark.parametrize(
    ("value", "places", "whole"), [(2.5, 0, 3), (-2.5, 0, -3), (0.05, 1, 1), (1e-15, 3, 0)]
)
def test_halves_are_rounded_away_from_zero(value: float, places: int, whole: int) -> None:
    assert scaled(value, places) == whole

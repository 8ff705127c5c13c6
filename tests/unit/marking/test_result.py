"""The cut is worked out by integers, so that no percentage is rounded the wrong way."""

from __future__ import annotations

import math

import pytest

from journeybook.marking.kind import thousandths
from journeybook.marking.result import least_passing


@pytest.mark.parametrize(
    ("percent", "of", "cut"), [(7, 100_000, 7000), (55, 100_000, 55_000), (67, 1000, 670), (33, 1001, 331)]
)
def test_the_cut_is_rounded_up_exactly(percent: int, of: int, cut: int) -> None:
    assert least_passing(percent, of) == cut


def test_a_float_would_ask_for_more() -> None:
    assert math.ceil(0.07 * 100) == 8
    assert least_passing(7, 100) == 7


@pytest.mark.parametrize(
    ("numerator", "denominator", "mark"),
    [(0, 3, 0), (1, 3, 333), (2, 3, 667), (1, 2000, 1), (1, 2001, 0), (3, 2000, 2), (7, 7, 1000)],
)
def test_a_mark_is_rounded_half_up(numerator: int, denominator: int, mark: int) -> None:
    assert thousandths(numerator, denominator) == mark

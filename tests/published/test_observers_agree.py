"""Agreement between two observers, against published tables."""

from __future__ import annotations

import pytest

from journeybook.marking.agreement import agreement


def lists(table: list[list[int]]) -> tuple[list[str], list[str]]:
    """A table of counts, rows for the first observer, as two lists of words."""
    pairs = [
        (str(row), str(column))
        for row, line in enumerate(table)
        for column, count in enumerate(line)
        for _ in range(count)
    ]
    return [one for one, _ in pairs], [other for _, other in pairs]


@pytest.mark.parametrize(
    ("table", "share", "kappa", "ac1"),
    [
        # README of the R package irrCAC by K. Gwet, data cont3x3abstractors; also scikit-learn and statsmodels.
        ([[13, 0, 0], [0, 20, 7], [0, 4, 56]], 0.89, 0.7964094, 0.8493305),
        # SAS output quoted in statsmodels stats/tests/test_inter_rater.py: kappa .4842.
        ([[0, 4, 1], [0, 8, 0], [0, 1, 5]], None, 0.4841629, None),
        # The classic two-reader example (from memory; R psych and scikit-learn give the same).
        ([[20, 5], [10, 15]], 0.7, 0.4, None),
        # The paradox of a table that is nearly all one word (the literature, from memory; scikit-learn agrees).
        ([[118, 5], [2, 0]], 0.944, -0.0233918129, 0.9407763376),
    ],
)
def test_published_tables(
    table: list[list[int]], share: float | None, kappa: float, ac1: float | None
) -> None:
    found_share, found_kappa, found_ac1 = agreement(*lists(table), len(table))
    assert found_kappa is not None
    assert float(found_kappa) == pytest.approx(kappa, abs=5e-8)
    if share is not None:
        assert float(found_share) == pytest.approx(share)
    if ac1 is not None:
        assert float(found_ac1) == pytest.approx(ac1, abs=5e-8)


def test_where_both_say_one_word_of_everything_kappa_has_nothing_to_say() -> None:
    share, kappa, ac1 = agreement(["yes"] * 5, ["yes"] * 5, 3)
    assert (share, kappa, ac1) == (1, None, 1)


@pytest.mark.parametrize(("first", "second", "categories"), [([], [], 3), (["a"], [], 3), (["a"], ["a"], 1)])
def test_lists_that_cannot_be_compared_are_refused(
    first: list[str], second: list[str], categories: int
) -> None:
    with pytest.raises(ValueError, match="equally long"):
        agreement(first, second, categories)

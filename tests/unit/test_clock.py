"""The day that counts is the latest that has begun anywhere, so that no date is called one to come too early."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta, timezone

import pytest

from journeybook.clock import latest_day


@pytest.mark.parametrize(
    ("moment", "day"),
    [
        pytest.param(
            datetime(2026, 11, 25, 9, 59, tzinfo=UTC), date(2026, 11, 25), id="before midnight there"
        ),
        pytest.param(
            datetime(2026, 11, 25, 10, 0, tzinfo=UTC), date(2026, 11, 26), id="after midnight there"
        ),
        pytest.param(
            datetime(2026, 11, 25, 23, 0, tzinfo=timezone(timedelta(hours=14))),
            date(2026, 11, 25),
            id="there",
        ),
    ],
)
def test_the_day_is_that_of_the_zone_furthest_ahead(moment: datetime, day: date) -> None:
    assert latest_day(moment) == day


def test_without_a_moment_the_clock_is_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1")
    assert latest_day() >= datetime.now(UTC).date()

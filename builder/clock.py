"""Which day it is: the one place that asks. What decides is given the day.

A date in a file is somebody's local date, so the day that counts is the latest that has begun anywhere: that of the
zone UTC+14, which is the furthest ahead (IANA time zone database, Pacific/Kiritimati). So the same sources are
judged alike wherever they are read.

The day decides about a warning and never about a byte of the site. So ``SOURCE_DATE_EPOCH``, which says what moment
to write into a product (reproducible-builds.org, specification 1.1), is not asked: it is often set to a day long past,
and every later date would be called one to come.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

_FURTHEST_AHEAD = timedelta(hours=14)


def latest_day(now: datetime | None = None) -> date:
    """The latest day that has begun somewhere at the moment ``now``, which is the clock's unless given."""
    return ((now or datetime.now(UTC)).astimezone(UTC) + _FURTHEST_AHEAD).date()

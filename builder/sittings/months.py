"""The day that is so many months after another."""

from __future__ import annotations

from calendar import monthrange
from datetime import date


def months_later(day: date, months: int) -> date:
    """Return the same day of the month, ``months`` later; the last day of a month that is too short for it."""
    years, month = divmod(day.month - 1 + months, 12)
    year = day.year + years
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))

"""What somebody types at a terminal or into a list: a day, a ticket, a fingerprint, read however they space it."""

from __future__ import annotations

import re
from datetime import date, datetime
from typing import Any

import click

_TICKET = (5, 5)
_FINGERPRINT = (4, 4, 4, 4)
_DASHES = re.compile(r"[\s\-‐-―]+")


class _Day(click.ParamType[datetime]):
    """A day as 2026-11-28; how it is refused says so in people's words."""

    name = "DAY"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> datetime:
        if isinstance(value, datetime):
            return value
        try:
            if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", str(value).strip(), re.ASCII):
                raise ValueError(value)
            return datetime.strptime(str(value).strip(), "%Y-%m-%d")
        except ValueError:
            self.fail(
                f"{str(value)[:40]!r} is no day. Write year, month and day in figures, as in {date.today()}.",
                param,
                ctx,
            )


DAY = _Day()


def ticket_of(typed: str) -> str:
    """The ticket that somebody typed: small letters, blanks, and a dash that is missing or another one do no harm."""
    return _grouped(typed, _TICKET)


def fingerprint_of(typed: str) -> str:
    """The fingerprint of a record that somebody typed, in the same way: screens show its groups without dashes."""
    return _grouped(typed, _FINGERPRINT)


def _grouped(typed: str, groups: tuple[int, ...]) -> str:
    plain = _DASHES.sub("", typed.upper())
    if len(plain) != sum(groups):
        return typed.strip().upper()
    parts, at = [], 0
    for length in groups:
        parts.append(plain[at : at + length])
        at += length
    return "-".join(parts)

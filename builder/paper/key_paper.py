"""The sheet of a key for the safe, as PDF: plain words, the code's picture, and the rows that can be typed.

What a key is, ``proof`` knows; here are only the lines that the sheet prints.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from journeybook.paper.press import SIZES, press


@dataclass(frozen=True, kw_only=True)
class KeyOnPaper:
    """What stands on the sheet."""

    holder: str
    role: str
    from_day: str
    until: str
    """ISO dates; both days are included."""
    demo: bool
    did: str
    fingerprint: str
    """Eight groups of four letters, apart by spaces."""
    rows: Sequence[str]
    """As they are typed: ``1  ABCD EFGH … / KX``."""
    code: bytes
    """SVG of the QR code that holds the text of the key's file, with its quiet zone."""
    printed: str
    """ISO date of the sheet."""


def key_pdf(key: KeyOnPaper, *, made: datetime, paper: str = SIZES[0]) -> bytes:
    """Return the sheet of one key, one page; raises NoPress, NotSet."""
    data = {
        "paper": paper,
        "holder": key.holder,
        "role": key.role,
        "from": key.from_day,
        "until": key.until,
        "demo": key.demo,
        "did": key.did,
        "fingerprint": key.fingerprint.split(),
        "rows": [_parted(row) for row in key.rows],
        "printed": key.printed,
    }
    return press("key-paper", data, made=made, pictures={"code.svg": key.code})


def _parted(row: str) -> dict[str, object]:
    """A row as number, groups and the two letters that tell a slip."""
    number, _, rest = row.strip().partition("  ")
    letters, _, check = rest.partition(" / ")
    return {"number": number, "groups": letters.split(), "check": check}

"""The letters under which answers stand on paper: printed beside what was drawn, and keyed in from the sheet."""

from __future__ import annotations

import string

LETTERS = string.ascii_uppercase


def letters(count: int) -> list[str]:
    """Return A, B, C … for so many answers in their drawn order; numbers from 1 where the letters do not suffice."""
    return list(LETTERS[:count]) if count <= len(LETTERS) else [str(number + 1) for number in range(count)]

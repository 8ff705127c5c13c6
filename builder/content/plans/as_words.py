"""The words of a drawing as CommonMark that means just these words."""

from __future__ import annotations

import re

_SIGNS = re.compile(r"[!-/:-@\[-`{-~]")


def as_commonmark(words: str) -> str:
    """The words with a backslash before each sign that could mean something (CommonMark 0.31, backslash escapes)."""
    return _SIGNS.sub(lambda sign: "\\" + sign[0], words)

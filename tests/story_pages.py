"""The pages of ``diagnostics/why`` taken apart, so that what they say about a code can be tried."""

from __future__ import annotations

import re
from dataclasses import dataclass

_PAGE = re.compile(
    r"# (?P<code>[A-Z]\d{3}) (?P<title>[^\n]+)\n\n"
    r"(?P<why>.+?)\n\n"
    r"## Fails\n\n```(?P<language>yaml|json|svg|text)\n(?P<fails>.*?)```\n\n"
    r"## Mended\n\n```(?P=language)\n(?P<mended>.*?)```\n",
    re.DOTALL,
)


@dataclass(frozen=True, kw_only=True)
class Story:
    """A page taken apart."""

    code: str
    title: str
    why: str
    """One paragraph or more of CommonMark."""
    language: str
    """What the examples are written in: yaml; json, svg or text where the code is about such a file."""
    fails: str
    """An example that is refused with this code."""
    mended: str
    """The same, mended."""


def read_story(page: str) -> Story:
    """Take a page apart. Raises ``ValueError`` when it is not built like one."""
    found = _PAGE.fullmatch(page)
    if found is None:
        raise ValueError("a page has a heading, a reason, and an example each under Fails and Mended")
    return Story(**found.groupdict())

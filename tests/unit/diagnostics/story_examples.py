"""The examples on the pages of ``diagnostics/why``, ready to be tried; shared by the tests of each stage."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from story_pages import Story, read_story

from journeybook.diagnostics.codes import CODES
from journeybook.diagnostics.problem import Problem
from journeybook.diagnostics.why import story

Check = Callable[[str, str], Iterable[Problem]]
"""File name and text of an example -> the problems found in it."""


def codes_of(letters: str) -> list[str]:
    """The registered codes of these stages."""
    return [code for code in CODES if code[0] in letters]


def page_of(code: str) -> Story:
    """The page of a code, taken apart."""
    return read_story(story(code))


def file_of(example: str) -> str:
    """The file an example belongs to: what its first line names behind ``# ``, else ``example.yml``."""
    first = example.split("\n", 1)[0]
    return first.removeprefix("# ") if first.startswith("# ") and first.endswith(".yml") else "example.yml"


def found_in(example: str, check: Check) -> set[str]:
    """The codes that ``check`` finds in an example."""
    return {problem.code for problem in check(file_of(example), example)}

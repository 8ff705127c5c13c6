"""The examples on the pages of the M codes do what the pages say.

A JSON example holds the members that matter, of an otherwise good record (M012: of a compiled course); a text
example is a whole file.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from story_pages import read_story

from journeybook.diagnostics.codes import CODES
from journeybook.diagnostics.why import story
from journeybook.marking import canonical
from journeybook.marking.remark import re_mark

KEPT = Path(__file__).parents[2] / "kept" / "format-1"
GOOD = (KEPT / "attempt-passed.json").read_bytes()
COMPILED = (KEPT / "releases" / "1.0" / "uk" / "compiled.json").read_bytes()
# M013 needs a project; the tests of the command line show it.
RECORD_CODES = [code for code in CODES if code.startswith("M") and code != "M013"]


def with_members(data: bytes, example: str) -> bytes:
    return canonical.write(json.loads(data) | json.loads(example))


def codes(code: str, language: str, example: str) -> set[str]:
    """The codes that an example gives."""
    if code == "M012":
        found = re_mark(GOOD, with_members(COMPILED, example))
    elif language == "text":
        found = re_mark(example.removesuffix("\n").encode(), COMPILED)
    else:
        found = re_mark(with_members(GOOD, example), COMPILED)
    return {problem.code for problem in found.problems}


@pytest.mark.parametrize("code", RECORD_CODES)
def test_the_failing_example_gives_its_code_and_no_other(code: str) -> None:
    page = read_story(story(code))
    assert codes(code, page.language, page.fails) == {code}


@pytest.mark.parametrize("code", RECORD_CODES)
def test_the_mended_example_is_free_of_it(code: str) -> None:
    page = read_story(story(code))
    # A small whole file passes the checks of its bytes, and is then no attempt.
    still_there = {"M005"} if page.language == "text" else set()
    assert codes(code, page.language, page.mended) == still_there

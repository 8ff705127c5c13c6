"""The examples on the pages behind the codes.

What is said to fail fails with that code, what is mended does not.
"""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest
import yaml
from story_pages import read_story

from journeybook.audit import audit
from journeybook.content.assembly import course_from_files
from journeybook.diagnostics.codes import CODES
from journeybook.diagnostics.why import story

BASE = Path(__file__).parent / "base"
OURS = sorted(code for code in CODES if code[0] in "NCLQDPJUEFBKWA")

STAND_FOR_THE_DISK = frozenset({"B005", "C020", "C022", "C023", "C024", "F003"})
"""What is wrong there is a file's size, its rights or its absence, not its text; ``tests/unit`` has those."""

GOOD = {
    path.relative_to(BASE).as_posix(): path.read_bytes() for path in sorted(BASE.rglob("*")) if path.is_file()
}


def overlaid(example: str) -> dict[str, bytes]:
    """The good course with the example's file, or files where its first line names a folder."""
    first, _, text = example.partition("\n")
    named = re.fullmatch(r"# (\S+)", first)
    assert named, first
    if not named[1].endswith("/"):
        return GOOD | {named[1]: text.encode()}
    return GOOD | {named[1] + name: content.encode() for name, content in yaml.safe_load(text).items()}


def codes_in(example: str) -> set[str]:
    course, problems = course_from_files(
        overlaid(example),
        "pillar-drill",
        profile="uk",
        course_dir="course_src/pillar-drill",
        quiz_dir="quizzes/pillar-drill",
        today=date(2026, 11, 25),
    )
    found = {problem.code for problem in problems}
    return found | {problem.code for problem in audit(course)} if course else found


@pytest.mark.parametrize("code", [code for code in OURS if code not in STAND_FOR_THE_DISK])
def test_the_example_fails_with_its_code(code: str) -> None:
    assert code in codes_in(read_story(story(code)).fails)


@pytest.mark.parametrize("code", OURS)
def test_the_mended_example_is_free_of_it(code: str) -> None:
    found = codes_in(read_story(story(code)).mended)
    assert not [one for one in found if not one.startswith("A")]
    assert code not in found

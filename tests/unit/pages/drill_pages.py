"""The pages of the small course that the golden messages start from."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

from journeybook.content.loader import load_course
from journeybook.content.model import Course
from journeybook.content.wording import Wording
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.leaf import Leaf
from journeybook.pages.reading import reading_leaves
from journeybook.pages.shell import Shell

BASE = Path(__file__).parents[2] / "faults" / "base"
DIGEST = "0123456789abcdef" * 4
FACTS = BuildFacts(version="1.0", draft=True, profile="Example rules")


@cache
def drill_course() -> Course:
    course, problems = load_course(BASE, "pillar-drill", profile="uk")
    assert course is not None, problems
    return course


@cache
def leaves() -> dict[str, Leaf]:
    course = drill_course()
    return {leaf.slug: leaf for leaf in reading_leaves(course, Wording(course), FACTS, lambda: DIGEST)}


def page(slug: str, *, several: bool = False) -> str:
    return page_of(shell(several=several), leaves()[slug])


def shell(course: Course | None = None, facts: BuildFacts = FACTS, *, several: bool = False) -> Shell:
    course = course or drill_course()
    return Shell(course, Wording(course), facts, lambda: DIGEST, several=several)


def page_of(shell: Shell, leaf: Leaf) -> str:
    return shell.page(shell.targets.settled(leaf)).decode()


def words_in(html: str) -> str:
    """What a reader sees, roughly: tags gone, spaces single."""
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())

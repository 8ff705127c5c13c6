"""What a problem is: a value with a code, a place, a sentence about what is wrong and one about the cure."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Level(StrEnum):
    """How much a problem weighs."""

    FAULT = "fault"
    """Nothing is built while it stands."""
    WARNING = "warning"
    """The site is built; a course with a warning is not released."""


@dataclass(frozen=True, kw_only=True, slots=True, order=True)
class Place:
    """Where in a file of the author's something stands."""

    file: str
    """Path with forward slashes, relative to the folder of mkdocs.yml."""
    line: int = 1
    """Counted from 1."""
    column: int = 1
    """Counted from 1, in characters."""
    length: int = 1
    """How many characters the marker underlines, on that line only; 0 means the file as a whole."""
    trail: str = ""
    """The way there by id, in words: ``question flow-03, option c2``."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Problem:
    """One thing to mend."""

    code: str
    """A letter and three digits; a page of ``diagnostics/why`` tells its story."""
    level: Level
    place: Place
    message: str
    """What is wrong, one sentence, in the author's words."""
    mend: str
    """What to do about it, one sentence that starts with a verb."""
    also_at: tuple[Place, ...] = ()
    """Other places that belong to it, such as the first of two equal ids."""

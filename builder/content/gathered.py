"""What has been read of a course so far: every sound object, and the names of the unsound ones.

Cross-checks look at this and not at the finished course, so that one bad question does not hide what is
wrong with the others, and a name whose record is unsound is not called unknown as well.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum
from functools import cached_property
from typing import Any, NamedTuple, TypeVar

from journeybook.content.file_read import FileRead
from journeybook.content.formats.course import CourseFile
from journeybook.content.formats.figure import FigureFile
from journeybook.content.formats.lesson import ModuleFile
from journeybook.content.formats.questions import BankFile
from journeybook.content.formats.sheets import SheetFile, SourcesFile, WordsFile
from journeybook.content.layout import NAMED, Layout, ModuleFolder
from journeybook.content.model import Bench, Blueprint, Figure, Lesson, Question, Value
from journeybook.diagnostics.problem import Place
from journeybook.source.near import choice_of, nearest
from journeybook.source.reading import Origin
from journeybook.source.scalars import ID_PATTERN

Thing = TypeVar("Thing")


class Naming(StrEnum):
    """What a name can be the name of."""

    OUTCOME = "outcome"
    FACT = "critical fact"
    LESSON = "lesson"
    QUESTION = "question"
    SOURCE = "source"
    FIGURE = "figure"
    DRILL = "drill"
    PRACTICAL = "practical"
    STEP = "step of a practical"
    JOB_CARD = "job card"
    DUTIES = "list of duties"
    BENCH = "bench"
    CALCULATOR = "calculator"
    WORD = "word"
    KIT = "kit value"
    PROFILE = "profile value"


@dataclass(kw_only=True)
class Names:
    """The names of one sort that the files hold, sound or not."""

    known: set[str] = field(default_factory=set)
    whole: bool = True
    """False when a file that holds such names could not be read: then no name is called unknown."""

    def lacks(self, name: str) -> bool:
        """True when no file holds the name, and every file was read."""
        return self.whole and name not in self.known

    def hint(self, name: str) -> str:
        """A cure for a name that is not there: the nearest, or all where they are few."""
        near = nearest(name, [one for one in self.known if re.fullmatch(ID_PATTERN, one)])
        if near:
            return f"Write {' or '.join(f'`{one}`' for one in near)}, or add"
        if 0 < len(self.known) <= 8:
            return f"{choice_of(sorted(self.known))}, or add"
        return "Correct it, or add"


class SheetsRead(NamedTuple):
    """The values that arithmetic may name."""

    values: dict[str, dict[str, Value]]
    """``kit`` and ``profile`` -> their values by id."""
    unread: frozenset[str]
    """Which of the two could not be read whole."""
    benches: Mapping[str, Bench] = {}
    """The benches that numbers are read off; empty for a file that reads off none."""


@dataclass(kw_only=True)
class ModuleRead:
    """A module folder as read; ``file`` is missing where module.yml is or is unsound."""

    folder: ModuleFolder
    file: ModuleFile | None
    lessons: list[Lesson]


@dataclass(frozen=True, kw_only=True)
class UnusedProfile:
    """A profile of the course that this build is not for: its values, and where each was read from."""

    id: str
    file: SheetFile
    origins: Mapping[int, Origin]

    def place(self, thing: object, key: str, index: int) -> Place:
        """Where an entry of a field's list stands."""
        return self.origins[id(thing)].place(key, index)


@dataclass(kw_only=True)
class Gathered:
    """Everything read of one course for one profile."""

    course_id: str
    profile_id: str
    layout: Layout
    course: CourseFile | None = None
    kit: SheetFile | None = None
    profile: SheetFile | None = None
    unused_profiles: list[UnusedProfile] = field(default_factory=list)
    sources: SourcesFile | None = None
    words: WordsFile | None = None
    modules: list[ModuleRead] = field(default_factory=list)
    figure_files: dict[str, FigureFile] = field(default_factory=dict)
    figures: dict[str, Figure] = field(default_factory=dict)
    banks: dict[str, BankFile] = field(default_factory=dict)
    blueprint: Blueprint | None = None
    named: dict[str, dict[str, Any]] = field(default_factory=lambda: {folder: {} for folder in NAMED})
    """Folder -> id -> what the file of that name holds, where it is sound."""
    files: list[FileRead] = field(default_factory=list)
    """Each file of this build that could be read, in the order of reading."""
    names: dict[Naming, Names] = field(default_factory=lambda: {one: Names() for one in Naming})
    draft: bool = False
    """course.yml's ``draft``."""
    today: date | None = None
    """The latest day that has begun, where that is known."""

    def every(self, kind: type[Thing]) -> list[Thing]:
        """Every sound object of a class (or of its subclasses), file by file, top to bottom."""
        return [
            thing for made, things in self._by_class.items() if issubclass(made, kind) for thing in things
        ]

    @cached_property
    def _by_class(self) -> dict[type, list[Any]]:
        found: dict[type, list[Any]] = {}
        for file in self.files:
            for made, things in file.by_class.items():
                found.setdefault(made, []).extend(things)
        return found

    @cached_property
    def _origins(self) -> dict[int, Origin]:
        """Put together when the first place is asked for: in a sound course that is seldom."""
        found: dict[int, Origin] = {}
        for file in self.files:
            found.update(file.origins)
        return found

    @cached_property
    def questions(self) -> dict[str, Question]:
        """Every sound question by its id."""
        return {question.id: question for question in self.every(Question)}

    @property
    def sheets(self) -> SheetsRead:
        """The kit sheet and the profile."""
        both = {"kit": self.kit, "profile": self.profile}
        return SheetsRead(
            {
                name: {value.id: value for value in sheet.values} if sheet else {}
                for name, sheet in both.items()
            },
            frozenset(name for name, sheet in both.items() if sheet is None),
        )

    def place(self, thing: object, key: str | None = None, index: int | None = None) -> Place:
        """Where an object of the model, a field of it, or an entry of that field's list stands."""
        return self._origins[id(thing)].place(key, index)

    def lacks_any(self, named: Iterable[tuple[Naming, str]]) -> bool:
        """True when no file holds one of the names."""
        return any(self.names[naming].lacks(name) for naming, name in named)

    def missing(self, naming: Naming, names: Iterable[str]) -> Iterator[tuple[int, str]]:
        """The names (with their number) that no file holds."""
        known = self.names[naming]
        for index, name in enumerate(names):
            if known.lacks(name):
                yield index, name

"""The class file of a sitting: who holds it, where and when, and who sits. YAML, read as strictly as a course."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from journeybook.content.file_read import FileRead, read_file
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.listing import Listing
from journeybook.source.scalars import Day, Flag, Text, Whole
from journeybook.source.shapes import Field, Record

_LINE = Text(300)
_NONE = -1


@dataclass(frozen=True, kw_only=True)
class ClassAssessor:
    """Who holds the sitting."""

    name: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class Person:
    """Somebody who sits."""

    id: str
    name: str
    workplace: str
    extra_minutes: int
    """-1 where the file gives none."""
    extra_percent: int
    oral: bool
    place: Place

    def minutes_beyond(self, minutes: int) -> int:
        """The extra minutes; a percentage is rounded up to whole minutes."""
        if self.extra_percent != _NONE:
            return -(-minutes * self.extra_percent // 100)
        return max(self.extra_minutes, 0)


@dataclass(frozen=True, kw_only=True)
class ClassFile:
    """The file as read."""

    title: str
    held_on: date
    location: str
    assessor: ClassAssessor
    identity: str
    trainer: str
    trained: date | None
    people: tuple[Person, ...]
    place: Place


_PERSON = Record(
    Person,
    "person",
    [
        Field("id", Text(60), "What tells this person from all others, in quotes: a staff number.", "0417"),
        Field("name", Text(120), "The name as it stands on the certificate.", "Robin Ashdown"),
        Field("workplace", Text(120, blank=True), "Where the person works.", "Bay 3", default=""),
        Field("extra-minutes", Whole(1, 480), "Minutes on top of the check's time.", 15, default=_NONE),
        Field("extra-percent", Whole(1, 200), "The same in percent of that time.", 25, default=_NONE),
        Field("oral", Flag(), "true where the questions are read out to the person.", True, default=False),
    ],
    id_key="name",
)

CLASS_FILE = Record(
    ClassFile,
    "class file",
    [
        Field("title", _LINE, "What the sitting is called.", "Wednesday class"),
        Field("date", Day(), "The day of the sitting.", "2026-12-02", name="held_on"),
        Field("place", _LINE, "Where it is held.", "Training room 2", name="location"),
        Field(
            "assessor",
            Record(
                ClassAssessor,
                "assessor",
                [
                    Field("name", Text(120), "Who holds the sitting.", "T. Marrable"),
                    Field("basis", _LINE, "By what right: training, experience, who named them.", "Foreman, named"),
                ],
                placed=False,
            ),
            "Who holds the sitting, and by what right.",
            {"name": "T. Marrable", "basis": "Foreman, named by the works manager"},
        ),
        Field("identity", _LINE, "How it is checked who each person is.", "Works pass with photograph"),
        Field("trainer", Text(120), "Who gave the training.", "A. Fenwright"),
        Field("trained", Day(), "The last day of the training.", "2026-12-01", default=None),
        Field(
            "people",
            Listing(_PERSON, least=1, most=500, noun="person"),
            "Who sits.",
            [{"id": "0417", "name": "Robin Ashdown"}],
        ),
    ],
    title="class file",
)  # fmt: skip


def read_class_file(data: bytes, path: str) -> tuple[ClassFile | None, list[Problem]]:
    """Return the class, or None, and what has to be mended; ``path`` is how messages name the file."""
    file = read_file(data, path, CLASS_FILE)
    problems = [*file.problems, *_more(file)]
    found = file.value
    if problems or not isinstance(found, ClassFile):
        return None, problems
    return found, []


def _more(file: FileRead) -> Iterator[Problem]:
    """What needs more than one field to be seen."""
    seen: dict[str, Person] = {}
    for person in file.every(Person):
        known = seen.setdefault(composed(person.id), person)
        if known is not person:
            yield fault(
                "H006",
                file.place(person, "id"),
                f"Two people have the id {person.id}: {known.name} and {person.name}.",
                "Give each person an id of their own; one person sits once in a sitting.",
                [file.place(known, "id")],
            )
        if person.extra_minutes != _NONE and person.extra_percent != _NONE:
            yield fault(
                "H007",
                file.place(person, "extra-percent"),
                f"{person.name} has extra time in minutes and in percent.",
                "Keep one of the two.",
            )


def composed(text: str) -> str:
    """A name with one spelling in bytes: Unicode's composed form (NFC), single spaces."""
    return " ".join(unicodedata.normalize("NFC", text).split())


def same_name(one: str, other: str) -> bool:
    """Whether two names are one, however they were typed: then nobody can tell the two people apart on paper."""
    return composed(one).casefold() == composed(other).casefold()

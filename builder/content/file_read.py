"""What one file of a course gives, whatever the others hold: its object, its ids, what is wrong in it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, TypeVar

from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.reading import INVALID, Origin
from journeybook.source.shapes import FileShape, read_root
from journeybook.source.strict_yaml import read_document

Context = TypeVar("Context")
Result = TypeVar("Result")
Thing = TypeVar("Thing")


@dataclass(kw_only=True, eq=False)
class FileRead:
    """One file as read. A later load gets the very same one back while the file's bytes are the same."""

    root: object
    """The plain data; None where the text could not be read to its end."""
    value: Any
    """What its table made of it; None where anything in it is unsound."""
    problems: list[Problem]
    origins: Mapping[int, Origin]
    """By ``id()`` of each sound object, top to bottom."""
    _kept: dict[Callable[..., Any], tuple[object, Any]] = field(default_factory=dict)

    @cached_property
    def by_class(self) -> dict[type, list[Any]]:
        """Its sound objects by class, top to bottom."""
        found: dict[type, list[Any]] = {}
        for origin in self.origins.values():
            found.setdefault(type(origin.thing), []).append(origin.thing)
        return found

    def every(self, kind: type[Thing]) -> list[Thing]:
        """Every sound object of a class (or of its subclasses)."""
        return [thing for made, things in self.by_class.items() if issubclass(made, kind) for thing in things]

    def place(self, thing: object, key: str | None = None, index: int | None = None) -> Place:
        """Where an object of the file, a field of it, or an entry of that field's list stands."""
        return self.origins[id(thing)].place(key, index)

    def ids(self, key: str) -> list[str]:
        """The ids of a list, those of unsound entries included."""
        return self.worked_out(_ids, key)

    def has_list(self, key: str) -> bool:
        """Whether there is a list under a key."""
        return isinstance(self.root, dict) and isinstance(self.root.get(key), list)

    def worked_out(self, work: Callable[[FileRead, Context], Result], context: Context) -> Result:
        """What ``work`` gives for this file; worked out once for as long as its context is equal.

        ``work`` must depend on nothing but the two: so a load after one edit repeats it for one file.
        """
        kept = self._kept.get(work)
        if kept is not None and kept[0] == context:
            known: Result = kept[1]
            return known
        found = work(self, context)
        self._kept[work] = (context, found)
        return found


def _ids(file: FileRead, key: str) -> list[str]:
    entries = file.root.get(key) if isinstance(file.root, dict) else None
    found = (
        [entry.get("id") for entry in entries if isinstance(entry, dict)] if isinstance(entries, list) else []
    )
    return [name for name in found if isinstance(name, str)]


def read_file(
    data: bytes, path: str, shape: FileShape, given: Mapping[str, Mapping[str, Any]] | None = None
) -> FileRead:
    """Read one file by its table. ``given``: fields that do not stand in it (``source.reading.Reading.given``)."""
    document, problems = read_document(data, path)
    if document is None:
        return FileRead(root=None, value=None, problems=problems, origins={})
    value, reading = read_root(shape, document, given)
    return FileRead(
        root=document.root,
        value=None if value is INVALID else value,
        problems=[*problems, *reading.problems],
        origins=reading.origins,
    )

"""What is collected while one document is read by tables: problems, and where each object was read from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import Any, Final

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.document import Document


class _Invalid(Enum):
    INVALID = "invalid"


INVALID: Final = _Invalid.INVALID
"""What a shape returns for a value that is not as it should be; the problem is noted already."""


@dataclass(slots=True, eq=False)
class Origin:
    """Where a model object was read from, so that later checks can point at its fields."""

    thing: Any
    """The object; held here so that its ``id()`` stays its own."""
    document: Document
    container: dict[str, Any]
    trail: str

    def place(self, key: str | None = None, index: int | None = None) -> Place:
        """The place of a field's value, of an entry of its list, or of the whole if it was left out."""
        if key is None or key not in self.container:
            return self.document.place(self.container, trail=self.trail)
        value = self.container[key]
        if index is not None and isinstance(value, list) and index < len(value):
            return self.document.place(value, index, trail=self.trail)
        return self.document.place(self.container, key, trail=self.trail)


@dataclass(slots=True)
class Reading:
    """What is collected while one document is read."""

    document: Document
    problems: list[Problem] = field(default_factory=list)
    origins: dict[int, Origin] = field(default_factory=dict)
    """By ``id()`` of each object made, also of those whose surroundings are unsound."""
    given: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    """Fields that do not stand in the file, by the record's noun: a question's bank is its file's name."""

    def refuse(
        self,
        code: str,
        container: Any,
        key: Any,
        trail: str,
        message: str,
        mend: str,
        *,
        on_key: bool = False,
    ) -> _Invalid:
        """Note a fault at a value (or at its key) and return ``INVALID``."""
        place = self.document.place(container, key, on_key=on_key, trail=trail)
        self.problems.append(fault(code, place, message, mend))
        return INVALID


def what_is(value: object) -> str:
    """A value's kind in an author's words."""
    if value is None:
        return "empty"
    if isinstance(value, bool):
        return "yes or no (true, false)"
    if isinstance(value, str):
        return "text"
    if isinstance(value, list):
        return "a list"
    if isinstance(value, dict):
        return "a set of keys"
    return "a number"


def an(noun: str) -> str:
    """A noun with its article."""
    return f"an {noun}" if noun[0] in "aeio" else f"a {noun}"


def called(key: object) -> str:
    """How a message names the value under ``key``: by its key, or by its number in the list."""
    return f"Entry {key + 1}" if isinstance(key, int) else f"`{key}`"

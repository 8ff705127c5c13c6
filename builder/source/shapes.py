"""Shapes: tables that say what a file may hold, and the reader that makes frozen data of plain data by them.

A *shape* reads ``container[key]`` and returns the value for the model, or ``INVALID`` after it has noted
every problem it found. Nothing here stops at the first problem, and nothing here raises for what an author
wrote. The same tables give the JSON Schemas that editors complete and underline from (``Shape.schema``).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place
from journeybook.source.document import Document
from journeybook.source.examples import clause, written
from journeybook.source.near import nearest
from journeybook.source.placed import Placed
from journeybook.source.reading import INVALID, Origin, Reading, an, called, what_is

REQUIRED = object()
"""The default of a field that has none."""


class Shape(Protocol):
    """Something that can read one value and describe it to an editor."""

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The model's value for ``container[key]``, or ``INVALID``."""

    def schema(self) -> dict[str, Any]:
        """The JSON Schema (draft 2020-12) of the value as written."""


@dataclass(frozen=True)
class Field:
    """One key of a record."""

    key: str
    shape: Shape
    describe: str
    """A sentence that tells an author what to write."""
    example: Any
    """Plain data as YAML would give it."""
    default: Any = REQUIRED
    name: str = ""
    """The field of the model; the key with underscores unless given."""
    mistaken: str = ""
    """Another word that people write for the key, too far from it to be taken for a slip of the keyboard."""

    @property
    def model_name(self) -> str:
        """Name of the model's field."""
        return self.name or self.key.replace("-", "_")

    def schema(self) -> dict[str, Any]:
        """The value's schema with the sentence and the example."""
        return {**self.shape.schema(), "description": self.describe, "examples": [self.example]}


class Record:
    """A set of keys that becomes one object of a frozen dataclass without slots.

    ``noun`` names it in messages and trails (``question``); ``id_key`` is the key whose text tells one from
    another. ``placed`` is False for records that have no ``place`` in the model; ``fixed`` are keys that
    only tell kinds apart.
    """

    def __init__(
        self,
        make: type[Any],
        noun: str,
        fields: Sequence[Field],
        *,
        id_key: str = "",
        placed: bool = True,
        fixed: Mapping[str, str] | None = None,
        title: str = "",
    ) -> None:
        self.make = make
        self.noun = noun
        self.title = title or noun
        self.id_key = id_key
        self.placed = placed
        self._tells_when_asked = placed and issubclass(make, Placed)
        self.fields = tuple(fields)
        self.fixed = dict(fixed or {})
        self._by_key = {one.key: (one.model_name, one.shape) for one in fields}
        self._required = frozenset(one.key for one in fields if one.default is REQUIRED)
        self._defaults = {one.model_name: one.default for one in fields if one.default is not REQUIRED}

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The object, or ``INVALID``."""
        data = container[key]
        if type(data) is not dict:
            return reading.refuse(
                "C012",
                container,
                key,
                trail,
                f"{called(key)} is {what_is(data)} where the keys of {an(self.title)} belong.",
                f"Write its keys below each other: {', '.join(f'`{one.key}:`' for one in self.fields[:4])}.",
            )
        return self.read_keys(reading, data, self._trail(data, key, trail))

    def read_keys(self, reading: Reading, data: dict[str, Any], trail: str) -> Any:
        """The object from its keys, when the trail is known already."""
        values = dict(self._defaults)
        sound = True
        meant: set[str] = set()
        by_key = self._by_key
        for word in data:
            known = by_key.get(word)
            if known is None:
                if word not in self.fixed:
                    sound = False
                    meant.update(self._refuse_unknown(reading, data, word, trail))
                continue
            value = known[1].read(reading, data, word, trail)
            if value is INVALID:
                sound = False
            else:
                values[known[0]] = value
        if not data.keys() >= self._required:
            sound = False
            self._refuse_missing(reading, data, trail, meant)
        if not sound:
            return INVALID
        if self.noun in reading.given:
            values.update(reading.given[self.noun])
        if self._tells_when_asked:
            values["_read_from"] = (reading.document, data, trail)
        elif self.placed:
            values["place"] = reading.document.place(data, trail=trail)
        # The tables give every field, so the frozen class's own __init__, a guarded assignment for each,
        # would add time and nothing else.
        thing = object.__new__(self.make)
        thing.__dict__.update(values)
        reading.origins[id(thing)] = Origin(thing, reading.document, data, trail)
        return thing

    def _trail(self, data: dict[str, Any], key: Any, trail: str) -> str:
        name = data.get(self.id_key) if self.id_key else None
        if isinstance(name, str) and name:
            step = f"{self.noun} {name[:60]}"
        elif isinstance(key, int):
            step = f"{self.noun} {key + 1}"
        else:
            step = self.noun
        return f"{trail}, {step}" if trail else step

    def _refuse_unknown(self, reading: Reading, data: dict[str, Any], word: str, trail: str) -> Sequence[str]:
        """Note a key that is not in the table; returns the keys of which it may be a misspelling."""
        missing = [one for one in self.fields if one.key not in data]
        near = tuple(one.key for one in missing if word and one.mistaken == word)
        near = near or nearest(word, [one.key for one in missing])
        message = f"{an(self.title).capitalize()} has no key called `{word[:60]}`."
        if data[word] is None and " " in word and word != next(iter(data)):
            message = f"A comma ended the text before it, so `{word[:60]}` was taken for a key."
            mend = 'Put the whole text in straight quotes: "…".'
        elif near:
            mend = f"Write `{near[0]}:` if that is what is meant, or take the line out."
        else:
            mend = f"Take it out, or use one of {', '.join(one.key for one in self.fields)}."
        reading.refuse(
            "C001",
            data,
            word,
            trail,
            message,
            mend,
            on_key=True,
        )
        return near[:1]

    def _refuse_missing(
        self, reading: Reading, data: dict[str, Any], trail: str, meant: Iterable[str]
    ) -> None:
        """``meant`` are keys that are there misspelt: one slip is told once."""
        for one in self.fields:
            if one.key in self._required and one.key not in data and one.key not in meant:
                place = reading.document.place(data, trail=trail)
                reading.problems.append(
                    fault(
                        "C002",
                        place,
                        f"This {self.title} has no `{one.key}`.",
                        f"Add `{one.key}:`, {clause(one.describe)}, for example `{one.key}: "
                        f"{written(one.example)}`.",
                    )
                )

    def schema(self) -> dict[str, Any]:
        """An object schema that knows every key and refuses all others."""
        properties: dict[str, Any] = {word: {"const": value} for word, value in self.fixed.items()}
        properties.update({one.key: one.schema() for one in self.fields})
        required = [one.key for one in self.fields if one.default is REQUIRED]
        return {
            "type": "object",
            "properties": properties,
            "required": [*self.fixed, *required],
            "additionalProperties": False,
        }


class FileShape(Protocol):
    """The shape of a whole file: a record, or records told apart by a word."""

    noun: str
    title: str
    id_key: str

    @property
    def fields(self) -> Sequence[Field]:
        """The keys that it knows."""

    def read_keys(self, reading: Reading, data: dict[str, Any], trail: str) -> Any:
        """The object from its keys, or ``INVALID``."""

    def schema(self) -> dict[str, Any]:
        """Its JSON Schema."""


def read_root(
    shape: FileShape, document: Document, given: Mapping[str, Mapping[str, Any]] | None = None
) -> tuple[Any, Reading]:
    """Read a whole document by its record: the object or ``INVALID``, and what was collected on the way."""
    reading = Reading(document, given=given or {})
    root = document.root
    if type(root) is not dict:
        place = Place(file=document.file, length=0)
        keys = ", ".join(f"`{one.key}:`" for one in shape.fields[:4])
        found = "is empty" if root is None else f"holds {what_is(root)}"
        reading.problems.append(
            fault(
                "C012",
                place,
                f"The file {found} where the keys of {an(shape.title)} belong.",
                f"Start it with {keys}.",
            )
        )
        return INVALID, reading
    name = root.get(shape.id_key) if shape.id_key else None
    trail = f"{shape.noun} {name[:60]}" if isinstance(name, str) and name else ""
    return shape.read_keys(reading, root, trail), reading

"""Shapes of things that come in kinds: told apart by a word under one key, by a key, or by their only key."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place
from journeybook.source.near import nearest
from journeybook.source.reading import INVALID, Origin, Reading, what_is
from journeybook.source.scalars import OneOf
from journeybook.source.shapes import Field, Record


class KindUnion:
    """Records told apart by the word under one key (``kind: choice``)."""

    def __init__(self, key: str, noun: str, records: Mapping[str, Record]) -> None:
        self.key = key
        self.noun = noun
        self.records = dict(records)
        self.title = noun
        self.id_key = ""
        self._any = next(iter(records.values()))

    @property
    def fields(self) -> tuple[Field, ...]:
        """The keys with which such a file starts: the word, then those of the first record."""
        words = " or ".join(self.records)
        word = Field(
            self.key, OneOf({one: one for one in self.records}), f"The kind of {self.noun}: {words}.", words
        )
        return (word, *self._any.fields)

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The object of the record that the word names, or ``INVALID``."""
        data = container[key]
        record = self._record_of(data)
        if record is not None:
            return record.read(reading, container, key, trail)
        if type(data) is not dict:
            return self._any.read(reading, container, key, trail)
        here = self._any._trail(data, key, trail)
        return self._refuse(reading, data, here, reading.document.place(container, key, trail=here))

    def read_keys(self, reading: Reading, data: dict[str, Any], trail: str) -> Any:
        """The object from its keys, where they are a whole file."""
        record = self._record_of(data)
        if record is not None:
            return record.read_keys(reading, data, trail)
        return self._refuse(reading, data, trail, reading.document.place(data, trail=trail))

    def _record_of(self, data: Any) -> Record | None:
        kind = data.get(self.key) if type(data) is dict else None
        return self.records.get(kind) if isinstance(kind, str) else None

    def _refuse(self, reading: Reading, data: dict[str, Any], here: str, place: Place) -> Any:
        kind, words = data.get(self.key), list(self.records)
        if self.key not in data:
            reading.problems.append(
                fault(
                    "C002",
                    place,
                    f"This {self.noun} has no `{self.key}`.",
                    f"Add `{self.key}:` with one of {', '.join(words)}.",
                )
            )
            return INVALID
        near = nearest(kind, words) if isinstance(kind, str) else ()
        hint = f"Write `{self.key}: {near[0]}`" if near else f"Use one of {', '.join(words)}"
        shown = f"`{kind[:60]}`" if isinstance(kind, str) and kind else "this"
        return reading.refuse(
            "C010", data, self.key, here, f"There is no kind of {self.noun} called {shown}.", f"{hint}."
        )

    def schema(self) -> dict[str, Any]:
        """The word first, then the keys of its record."""
        return {
            "type": "object",
            "required": [self.key],
            "properties": {
                self.key: {"enum": list(self.records), "description": f"What kind of {self.noun} it is."}
            },
            "allOf": [
                {
                    "if": {"properties": {self.key: {"const": word}}, "required": [self.key]},
                    "then": record.schema(),
                }
                for word, record in self.records.items()
            ],
        }


class KeyUnion:
    """Records told apart by a key that only one of them has (``ask`` or ``do``)."""

    def __init__(self, noun: str, records: Mapping[str, Record]) -> None:
        self.noun = noun
        self.records = dict(records)
        self._any = next(iter(records.values()))

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The object of the record whose key is there, or ``INVALID``."""
        data = container[key]
        if type(data) is not dict:
            return self._any.read(reading, container, key, trail)
        words = [word for word in self.records if word in data]
        if len(words) == 1:
            return self.records[words[0]].read(reading, container, key, trail)
        if words:
            return self._refuse_several(reading, data, words, self._any._trail(data, key, trail))
        keys = [f"`{word}:`" for word in self.records]
        return reading.refuse(
            "C002",
            container,
            key,
            self._any._trail(data, key, trail),
            f"This {self.noun} has neither {' nor '.join(keys)}.",
            f"Add {' or '.join(keys)}.",
        )

    def _refuse_several(self, reading: Reading, data: dict[str, Any], words: list[str], here: str) -> Any:
        first, second = words[:2]
        with_each = [
            [f"`{one.key}`" for one in self.records[word].fields if one.key in data and not self._shared(one)]
            for word in (first, second)
        ]
        return reading.refuse(
            "C001",
            data,
            second,
            here,
            f"This {self.noun} has both `{first}:` and `{second}:`, and it takes one of the two.",
            f"Take out {_listed(with_each[0])}, or take out {_listed(with_each[1])}.",
            on_key=True,
        )

    def _shared(self, field: Field) -> bool:
        """Whether every record has the key."""
        return all(any(one.key == field.key for one in record.fields) for record in self.records.values())

    def schema(self) -> dict[str, Any]:
        """One record after the other; each needs its key, so only one can fit."""
        return {"oneOf": [record.schema() for record in self.records.values()]}


def _listed(words: Sequence[str]) -> str:
    return " and ".join(part for part in (", ".join(words[:-1]), words[-1]) if part)


class OneKeyUnion:
    """A set of exactly one key, the key being the kind (``- stop: "Stop and ask."``)."""

    def __init__(self, make: Callable[[str, Any, Place], Any], noun: str, fields: Sequence[Field]) -> None:
        self.make = make
        self.noun = noun
        self.fields = {one.key: one for one in fields}

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """What ``make(kind, value, place)`` gives, or ``INVALID``."""
        data = container[key]
        here = f"{trail}, {self.noun} {key + 1}" if trail else f"{self.noun} {key + 1}"
        kinds = ", ".join(self.fields)
        if type(data) is not dict or len(data) != 1:
            found = f"{len(data)} keys" if type(data) is dict else what_is(data)
            return reading.refuse(
                "C013",
                container,
                key,
                here,
                f"This {self.noun} holds {found}; each {self.noun} has exactly one key.",
                f"Start each {self.noun} on its own line with a dash and one of {kinds}.",
            )
        word = next(iter(data))
        known = self.fields.get(word)
        if known is None:
            near = nearest(word, list(self.fields))
            return reading.refuse(
                "C001",
                data,
                word,
                here,
                f"There is no {self.noun} called `{word[:60]}`.",
                f"Write `{near[0]}:`." if near else f"Use one of {kinds}.",
                on_key=True,
            )
        value = known.shape.read(reading, data, word, here)
        if value is INVALID:
            return INVALID
        thing = self.make(word, value, reading.document.place(data, trail=here))
        reading.origins[id(thing)] = Origin(thing, reading.document, data, here)
        return thing

    def schema(self) -> dict[str, Any]:
        """An object of one property."""
        return {
            "type": "object",
            "properties": {word: one.schema() for word, one in self.fields.items()},
            "additionalProperties": False,
            "minProperties": 1,
            "maxProperties": 1,
        }

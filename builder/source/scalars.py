"""Shapes of single values: text, ids, whole numbers, yes or no, days, words from a list, named numbers."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from typing import Any

from journeybook.source.near import nearest
from journeybook.source.reading import INVALID, Reading, called, what_is

ID_PATTERN = r"[a-z][a-z0-9]*(-[a-z0-9]+)*"
ID_LENGTH = 60
DAY_PATTERN = r"\d{4}-\d{2}-\d{2}"


def _as_quoted(key: Any, value: object) -> str:
    shown = str(value).lower() if isinstance(value, bool) else str(value)
    shown = shown[:40]
    return (
        f'Put it in quotes: `- "{shown}"`.'
        if isinstance(key, int)
        else f'Put it in quotes: `{key}: "{shown}"`.'
    )


class Text:
    """Text of some length.

    ``pattern`` narrows what it may be; ``rule`` says so in words, and how to mend it. ``instead``: how to mend true
    or false, where people take the key for a switch.
    """

    def __init__(
        self,
        most: int = 20_000,
        *,
        pattern: str = "",
        rule: tuple[str, str] = ("", ""),
        code: str = "C015",
        blank: bool = False,
        instead: str = "",
    ) -> None:
        self.most = most
        self.instead = instead
        self.pattern = pattern
        self.rule = rule
        self.code = code
        self.blank = blank
        self._match = re.compile(pattern).fullmatch if pattern else None

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The text as written, or ``INVALID``."""
        value = container[key]
        if type(value) is str and len(value) <= self.most:
            if self._match is None:
                if self.blank or (value and not value.isspace()):
                    return value
            elif self._match(value):
                return value
        return self._refuse(reading, container, key, trail, value)

    def _refuse(self, reading: Reading, container: Any, key: Any, trail: str, value: object) -> Any:
        if value is None or (isinstance(value, str) and not value.strip()):
            return reading.refuse(
                "C004",
                container,
                key,
                trail,
                f"{called(key)} has no text.",
                "Write the text, or take the line out.",
            )
        if isinstance(value, (bool, int, Decimal)):
            return reading.refuse(
                "C003",
                container,
                key,
                trail,
                f"{called(key)} is {what_is(value)} where text belongs.",
                self.instead if self.instead and isinstance(value, bool) else _as_quoted(key, value),
            )
        if not isinstance(value, str):
            return reading.refuse(
                "C003",
                container,
                key,
                trail,
                f"{called(key)} is {what_is(value)} where text belongs.",
                "Write one text here; in quotes if it holds a colon, a bracket or a brace.",
            )
        if len(value) > self.most:
            return reading.refuse(
                "C005",
                container,
                key,
                trail,
                f"{called(key)} has {len(value)} characters; at most {self.most} are read.",
                "Shorten it, or split it up.",
            )
        return reading.refuse(
            self.code,
            container,
            key,
            trail,
            f"{called(key)} is written `{value[:60]}`; {self.rule[0]}.",
            self.rule[1],
        )

    def schema(self) -> dict[str, Any]:
        """A string schema."""
        if self.pattern:
            return {"type": "string", "pattern": f"^(?:{self.pattern})$", "maxLength": self.most}
        if self.blank:
            return {"type": "string", "maxLength": self.most}
        return {"type": "string", "pattern": r"\S", "maxLength": self.most}


class Id:
    """An id: small letters, digits and single hyphens.

    ``instead``: how to mend true or false, where people take the key for a switch.
    """

    def __init__(self, *, instead: str = "") -> None:
        self.instead = instead

    _match = re.compile(ID_PATTERN).fullmatch

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The id, or ``INVALID``."""
        value = container[key]
        if type(value) is str and len(value) <= ID_LENGTH and Id._match(value):
            return value
        return self._refuse(reading, container, key, trail, value)

    def _refuse(self, reading: Reading, container: Any, key: Any, trail: str, value: object) -> Any:
        if value is None or value == "":
            return reading.refuse(
                "C004",
                container,
                key,
                trail,
                f"{called(key)} has no id.",
                "Write an id, or take the line out.",
            )
        if isinstance(value, (list, dict)):
            return reading.refuse(
                "C003",
                container,
                key,
                trail,
                f"{called(key)} is {what_is(value)} where one id belongs.",
                "Write a single id.",
            )
        mend = _new_id(str(value)) if key == "id" else _named_id(key, str(value))
        if isinstance(value, bool) and self.instead:
            mend = self.instead
        return reading.refuse(
            "C006",
            container,
            key,
            trail,
            f"`{str(value)[:70]}` cannot be an id: ids start with a small letter and go on with small "
            "letters, digits "
            f"and single hyphens, {ID_LENGTH} characters at most.",
            mend,
        )

    def schema(self) -> dict[str, Any]:
        """A string schema with the pattern."""
        return {"type": "string", "pattern": f"^{ID_PATTERN}$", "maxLength": ID_LENGTH}


def _new_id(written: str) -> str:
    """What to do where something is given its id."""
    plain = re.sub(r"[^a-z0-9]+", "-", written.lower()).strip("-")[:ID_LENGTH].rstrip("-")
    suggestion = plain if re.fullmatch(ID_PATTERN, plain) else f"q-{plain}"[:ID_LENGTH].rstrip("-")
    return (
        f"Write `{suggestion}` here and wherever it is named." if plain else "Start it with a small letter."
    )


def _named_id(key: object, written: str) -> str:
    """What to do where something is named that has its id elsewhere."""
    parts = [part.strip() for part in written.split(",")]
    if len(parts) > 1 and all(re.fullmatch(ID_PATTERN, part) for part in parts):
        return f"Write several in square brackets: `{key}: [{', '.join(parts)}]`."
    stem, dot, _ = written.rpartition(".")
    if dot and re.fullmatch(ID_PATTERN, stem):
        return f"Write `{stem}`, without the ending of a file."
    return "Write the id of what is meant, as it stands there after `id:`."


class Whole:
    """A whole number in a range, both ends included."""

    def __init__(self, least: int, most: int) -> None:
        self.least = least
        self.most = most

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The number, or ``INVALID``."""
        value = container[key]
        if type(value) is int and self.least <= value <= self.most:
            return value
        wanted = f"a whole number from {self.least} to {self.most}"
        if type(value) is int:
            message = f"{called(key)} is {str(value)[:40]}; it can be {self.least} to {self.most}."
        elif isinstance(value, Decimal):
            message = f"{called(key)} is {str(value)[:40]} where {wanted} belongs."
        else:
            message = f"{called(key)} is {what_is(value)} where {wanted} belongs."
        quoted = isinstance(value, str) and re.fullmatch(r"\d{1,9}", value)
        mend = (
            f"Take the quotes away: `{key}: {value}`."
            if quoted
            else f"Write {wanted}, without quotes or unit."
        )
        return reading.refuse("C007", container, key, trail, message, mend)

    def schema(self) -> dict[str, Any]:
        """An integer schema."""
        return {"type": "integer", "minimum": self.least, "maximum": self.most}


class Flag:
    """true or false."""

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The flag, or ``INVALID``."""
        value = container[key]
        if type(value) is bool:
            return value
        return reading.refuse(
            "C008",
            container,
            key,
            trail,
            f"{called(key)} is {what_is(value)} where true or false belongs.",
            f"Write `{key}: true` or `{key}: false`, without quotes.",
        )

    def schema(self) -> dict[str, Any]:
        """A boolean schema."""
        return {"type": "boolean"}


class Day:
    """A day of the calendar, written ``2026-11-20``."""

    _match = re.compile(DAY_PATTERN, re.ASCII).fullmatch

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The day, or ``INVALID``."""
        value = container[key]
        if type(value) is str and Day._match(value):
            try:
                return date.fromisoformat(value)
            except ValueError:
                return reading.refuse(
                    "C009",
                    container,
                    key,
                    trail,
                    f"There is no day {value} in the calendar.",
                    "Correct it: year, month, day, for example `2026-11-20`.",
                )
        shown = f"`{value[:40]}`" if isinstance(value, str) and value else what_is(value)
        return reading.refuse(
            "C009",
            container,
            key,
            trail,
            f"{called(key)} is {shown} where a date belongs.",
            "Write year, month and day with hyphens, for example `2026-11-20`.",
        )

    def schema(self) -> dict[str, Any]:
        """A string schema for a date."""
        return {"type": "string", "format": "date", "pattern": f"^{DAY_PATTERN}$"}


class OneOf:
    """One of a few words, each standing for a value of the model."""

    def __init__(self, words: Mapping[str, Any]) -> None:
        self.words = dict(words)

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The value that the word stands for, or ``INVALID``."""
        value = container[key]
        if type(value) is str:
            found = self.words.get(value, INVALID)
            if found is not INVALID:
                return found
        near = nearest(value, list(self.words)) if isinstance(value, str) else ()
        shown = f"`{value[:60]}`" if isinstance(value, str) and value else what_is(value)
        mend = f"Write `{key}: {near[0]}`" if near else f"Use one of: {', '.join(self.words)}"
        return reading.refuse(
            "C010",
            container,
            key,
            trail,
            f"{called(key)} is {shown}; it can be "
            f"{' or '.join(self.words) if len(self.words) < 3 else ', '.join(self.words)}.",
            f"{mend}.",
        )

    def schema(self) -> dict[str, Any]:
        """An enumeration."""
        return {"enum": list(self.words)}


class NamedTexts:
    """A set of names, each with a short text (a row of ``given``) or another shape, read into a mapping."""

    NAME = r"[a-z][a-z0-9]*(_[a-z0-9]+)*"
    _match = re.compile(NAME).fullmatch

    def __init__(
        self,
        entry: Any,
        *,
        most: int = 20,
        noun: str = "named numbers",
        mend: str = 'Write names and numbers in quotes: `{flow: "170", hours: "4"}`.',
    ) -> None:
        self.entry = entry
        self.most = most
        self.noun = noun
        self.mend = mend

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """A mapping of names to texts, or ``INVALID``."""
        data = container[key]
        here = f"{trail}, row {key + 1}" if isinstance(key, int) else trail
        if type(data) is not dict or not 0 < len(data) <= self.most:
            return reading.refuse(
                "C012",
                container,
                key,
                here,
                f"{called(key)} is {what_is(data)} where 1 to {self.most} {self.noun} belong."
                if type(data) is not dict
                else f"{called(key)} has {len(data) or 'no'} names; it can have 1 to {self.most}.",
                self.mend,
            )
        values = {}
        sound = True
        for name in data:
            if not (len(name) <= ID_LENGTH and NamedTexts._match(name)):
                sound = False
                reading.refuse(
                    "C006",
                    data,
                    name,
                    here,
                    f"`{name[:60]}` cannot be a name in an expression.",
                    "Use small letters, digits and single underscores, starting with a letter.",
                    on_key=True,
                )
            values[name] = self.entry.read(reading, data, name, here)
        return values if sound and INVALID not in values.values() else INVALID

    def schema(self) -> dict[str, Any]:
        """An object schema with free names."""
        return {
            "type": "object",
            "propertyNames": {"pattern": f"^{self.NAME}$", "maxLength": ID_LENGTH},
            "additionalProperties": self.entry.schema(),
            "minProperties": 1,
            "maxProperties": self.most,
        }

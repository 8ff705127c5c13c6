"""A file that was read: plain data, and where each piece of it stood.

The positions are kept beside the data, one whole number for each key and value, so that the data stay
ordinary dictionaries and lists. Line, column and length are worked out only when a problem needs them.
"""

from __future__ import annotations

import re
from decimal import Decimal

from journeybook.diagnostics.problem import Place
from journeybook.source.lines import Lines

_PLAIN_NUMBER = re.compile(r"-?[0-9]+(?:\.[0-9]+)?")
_QUOTED = re.compile(r"'(?:[^'\r\n]|'')*'?|\"(?:[^\"\\\r\n]|\\[^\r\n])*\"?")
_BLOCK_HEADER = re.compile(r"[|>][-+0-9]*")
_SMALL = 24
"""Up to this many keys a mapping is searched key by key; beyond, an index is built once."""


class Document:
    """What ``read_document`` returns. The data must not be changed: positions are found by their order."""

    def __init__(self, *, file: str, root: object, lines: Lines, starts: dict[int, list[int]]) -> None:
        """``starts`` maps the id of each container to indexes into the text.

        First the container's own, then for a mapping key and value in turn, for a list each item.
        """
        self.file = file
        self.root = root
        """``dict[str, object]`` in file order, or a list; inside also str, int, Decimal, bool and None."""
        self._lines = lines
        self._starts = starts
        self._key_order: dict[int, dict[str, int]] = {}

    def place(
        self,
        container: object,
        key: str | int | None = None,
        *,
        on_key: bool = False,
        trail: str = "",
    ) -> Place:
        """Where the value under ``key`` of a mapping, or item number ``key`` (from 0) of a list, stands.

        With ``on_key`` the place of the key itself; without a key, or with one that is not there, the place
        where the container starts. Raises ``KeyError`` for a container that is not part of this document.
        """
        starts = self._starts[id(container)]
        if key is None and type(container) is dict and self._lines.text[starts[0]] not in "\"'":
            return self._start_of(container, starts[0], trail)
        if isinstance(container, dict) and isinstance(key, str) and key in container:
            number = self._number_of(container, key)
            if on_key:
                return self._place(starts[2 * number + 1], key, trail)
            return self._place(starts[2 * number + 2], container[key], trail)
        if isinstance(container, list) and isinstance(key, int) and 0 <= key < len(container):
            return self._place(starts[key + 1], container[key], trail)
        return self._place(starts[0], container, trail)

    def line_text(self, n: int) -> str:
        """Line ``n``, counted from 1, without its line break; empty when there is no such line."""
        return self._lines.line_text(n)

    def holds(self, words: str) -> bool:
        """Whether the words stand anywhere in the text of the file."""
        return words in self._lines.text

    def _start_of(self, mapping: dict[str, object], start: int, trail: str) -> Place:
        """What ``_place`` gives for a mapping, without detours: each object of a course has such a place."""
        line, column = self._lines.at(start)
        length = 1
        if self._lines.text[start] != "{":
            for first in mapping:
                length = len(first)
                break
        return Place(file=self.file, line=line, column=column, length=length, trail=trail)

    def _number_of(self, mapping: dict[str, object], key: str) -> int:
        if len(mapping) <= _SMALL:
            for number, name in enumerate(mapping):
                if name == key:
                    return number
        order = self._key_order.get(id(mapping))
        if order is None:
            order = {name: number for number, name in enumerate(mapping)}
            self._key_order[id(mapping)] = order
        return order[key]

    def _place(self, start: int, value: object, trail: str) -> Place:
        return self._lines.place(self.file, start, start + self._length(start, value), trail)

    def _length(self, start: int, value: object) -> int:
        """How many characters the value takes up in the text, on its first line."""
        text = self._lines.text
        opening = text[start : start + 1]
        if isinstance(value, dict):
            first = next(iter(value), None)
            return 1 if opening == "{" or first is None else self._length(start, first)
        if isinstance(value, list) or value is None:
            return 4 if text.startswith("null", start) else 1
        if opening in ("'", '"') and (quoted := _QUOTED.match(text, start)):
            return quoted.end() - start
        if opening in ("|", ">") and (header := _BLOCK_HEADER.match(text, start)):
            return header.end() - start
        if isinstance(value, bool):
            return 4 if value else 5
        if isinstance(value, int | Decimal):
            number = _PLAIN_NUMBER.match(text, start)
            return number.end() - start if number else 1
        return len(value) if isinstance(value, str) else 1

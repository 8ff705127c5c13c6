"""The shape of a list."""

from __future__ import annotations

from typing import Any

from journeybook.source.examples import written
from journeybook.source.reading import INVALID, Reading, called, what_is
from journeybook.source.shapes import Record, Shape
from journeybook.source.unions import KindUnion, OneKeyUnion


class Listing:
    """A list of one shape, read into a tuple. ``or_single``: one entry may stand without its list."""

    def __init__(
        self,
        entry: Shape,
        *,
        least: int = 0,
        most: int = 20_000,
        or_single: bool = False,
        noun: str = "entry",
    ) -> None:
        self.entry = entry
        self.least = least
        self.most = most
        self.or_single = or_single
        self.noun = noun

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """A tuple, or ``INVALID`` where any entry is."""
        data = container[key]
        if type(data) is not list:
            if self.or_single and data is not None and type(data) is not dict:
                one = self.entry.read(reading, container, key, trail)
                return INVALID if one is INVALID else (one,)
            message = f"{called(key)} is {what_is(data)} where a list belongs."
            return reading.refuse("C011", container, key, trail, message, self._as_list(key, data))
        if not self.least <= len(data) <= self.most:
            return self._refuse_count(reading, container, key, trail, len(data))
        entry = self.entry
        read = entry.read
        values = tuple([read(reading, data, index, trail) for index in range(len(data))])
        return INVALID if INVALID in values else values

    def _as_list(self, key: object, data: object) -> str:
        if isinstance(data, str) and data and not isinstance(self.entry, Record | KindUnion | OneKeyUnion):
            parts = data.split(", ")
            inside = data if all(written(part) == part for part in parts) else written(data)
            return f"Put square brackets round it: `{key}: [{inside}]`."
        mend = f"Write each {self.noun} on its own line after a dash and a space"
        return f"{mend}, or take `{key}` out." if data is None else f"{mend}."

    def _refuse_count(self, reading: Reading, container: Any, key: Any, trail: str, count: int) -> Any:
        if count > self.most:
            message = f"{called(key)} has {count} entries; at most {self.most} are read."
            mend = "Split it up."
        else:
            entries = "1 entry" if count == 1 else f"{count or 'no'} entries"
            message = f"{called(key)} has {entries}; it needs at least {self.least}."
            mend = f"Add another {self.noun}."
        return reading.refuse("C011", container, key, trail, message, mend)

    def schema(self) -> dict[str, Any]:
        """An array schema, or one entry or an array."""
        entry = self.entry.schema()
        many = {"type": "array", "items": entry, "minItems": self.least, "maxItems": self.most}
        return {"anyOf": [entry, many]} if self.or_single else many

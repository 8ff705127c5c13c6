"""The unit of an answer, in any spelling that the table of units knows: `m³/h` and `l/min` are `m3/h` and `L/min`."""

from __future__ import annotations

from typing import Any

from journeybook.content.units import canonical_unit
from journeybook.source.reading import Reading
from journeybook.source.scalars import Text


class UnitText(Text):
    """A unit; read as the symbol of the table, or as written where the table does not have it."""

    def __init__(self) -> None:
        super().__init__(30)

    def read(self, reading: Reading, container: Any, key: Any, trail: str) -> Any:
        """The symbol of the table, the text as written, or ``INVALID``."""
        value = super().read(reading, container, key, trail)
        return canonical_unit(value) or value if isinstance(value, str) else value

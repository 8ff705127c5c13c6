"""The values that texts refer to by name: the kit sheet and the profiles."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.content.model.sources import Confirmation
from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class Value:
    """A fact of the equipment (kit.yml) or the jurisdiction (profiles/ID.yml) that texts refer to by name."""

    id: str
    label: str
    value: str
    unit: str = ""
    note: str = ""
    sources: tuple[str, ...] = ()
    """Ids of citations, YAML key ``source``; none means the sheet itself."""
    page: str = ""
    confirmed: Confirmation | None = None
    example: bool = False
    """True where the value is invented."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """A titled set of values: the kit sheet, or a profile."""

    id: str
    title: str
    values: dict[str, Value]
    place: Place

    @property
    def is_example(self) -> bool:
        """True while any value is invented."""
        return any(value.example for value in self.values.values())

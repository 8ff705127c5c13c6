"""Where facts come from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from journeybook.diagnostics.problem import Place


class Standing(StrEnum):
    """How well a citation is known."""

    READ = "read"
    """Somebody read the original text."""
    REPORTED = "reported"
    """Seen quoted or described elsewhere."""
    FROM_MEMORY = "from memory"
    """Nobody looked it up."""
    COMMON_PRACTICE = "common practice"
    """What the trade does; there is no single source."""


@dataclass(frozen=True, kw_only=True)
class Confirmation:
    """Who looked at the original, and when."""

    by: str
    on: date
    edition: str = ""


@dataclass(frozen=True, kw_only=True)
class Citation:
    """One source, named once in sources.yml."""

    id: str
    title: str
    clause: str = ""
    year: str = ""
    standing: Standing
    """YAML key ``status``."""
    confirmed: Confirmation | None = None
    only: tuple[str, ...] = ()
    """Ids of the profiles in whose builds it exists; empty means all."""
    place: Place

    @property
    def is_confirmed(self) -> bool:
        """True when the original was read by somebody, or a person has recorded that they checked it."""
        return self.standing is Standing.READ or self.confirmed is not None

    def is_for(self, profile: str) -> bool:
        """True when it exists in a build for that profile."""
        return not self.only or profile in self.only

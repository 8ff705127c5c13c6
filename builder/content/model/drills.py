"""Drills: a situation that goes on, moment by moment, with what one does in it."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class Deed:
    """Something that can be done in a moment."""

    id: str
    """Unique in the whole drill: an answer is the deeds that were done, in their order."""
    text: str
    leads_to: str = ""
    """Id of the next moment; empty for a critical error. YAML key ``to``."""
    told: str = ""
    """What happens then, said before the next moment."""
    penalty: int = 0
    """Marks that it costs."""
    critical: str = ""
    """What it does to people; a deed with this ends the drill, and in a check the check is failed."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class Moment:
    """Where things stand, and what can be done; or, with ``worth``, how it ended."""

    id: str
    text: str
    deeds: tuple[Deed, ...] = ()
    seconds: int = 0
    """How long there is to act; 0 where nothing hurries."""
    late: str = ""
    """Id of the deed that happens when nobody has acted in time."""
    worth: int | None = None
    """Marks for ending here, 0 to 1000; None where it goes on. YAML key ``end``."""
    place: Place

    @property
    def is_end(self) -> bool:
        """True where the drill is over."""
        return self.worth is not None


@dataclass(frozen=True, kw_only=True)
class Drill:
    """A situation to react to: a graph of moments without a way back."""

    id: str
    title: str
    situation: str
    start: str
    """Id of the first moment."""
    moments: tuple[Moment, ...]
    sources: tuple[str, ...] = ()
    figure: str = ""
    place: Place

    @property
    def deeds(self) -> tuple[Deed, ...]:
        """Every deed, in the order of the file."""
        return tuple(deed for moment in self.moments for deed in moment.deeds)

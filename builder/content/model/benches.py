"""Benches: things to try out on a page. One class a kind; ``kind`` is the YAML word."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import ClassVar

from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class Bench:
    """What every kind of bench has."""

    kind: ClassVar[str]

    id: str
    """The name of its file in benches/."""
    title: str
    intro: str = ""
    caution: str = ""
    """What it must not be taken for; stands on the bench."""
    sources: tuple[str, ...] = ()
    example: bool = False
    """True where its values are invented."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class Stand:
    """A place or value for some of the controls; empty for the others."""

    setting: str = ""
    load: str = ""
    opening: str = ""
    temperature: str = ""
    height: str = ""
    charge: str = ""

    @property
    def given(self) -> dict[str, str]:
        """Control -> what is given, for those that are."""
        return {control: text for control, text in vars(self).items() if text}


@dataclass(frozen=True, kw_only=True)
class BenchReading:
    """A number that stands on a bench, for a number question to work with."""

    bench: str
    of: str
    """Id of the reading."""
    at: Stand = Stand()
    """Where controls stand: the id or value of a place; one that is not named stands where the bench says."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class Trial:
    """A bench that stands above a question, set up for it."""

    bench: str
    start: Stand = field(default_factory=Stand)
    """Where controls stand: the id or value of a place; one that is not named stands where the bench says."""
    moves: tuple[str, ...] = ()
    """The controls that the learner can change."""
    hides: tuple[str, ...] = ()
    """Controls whose place is not shown."""
    place: Place

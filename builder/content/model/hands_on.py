"""Kinds of question that are answered with the hands: a place on a drawing, a drill, units to sort, a bench to set."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from journeybook.content.model.questions import Option, Question
from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class Spot(Option):
    """A named part of a drawing."""

    part: str
    """Id of the element in the drawing, as its author wrote it."""


@dataclass(frozen=True, kw_only=True)
class SpotQuestion(Question):
    """One part of the drawing ``figure`` is right; it can always be chosen from a list, too."""

    kind: ClassVar[str] = "spot"
    offers: ClassVar[str] = "spots"
    spots: tuple[Spot, ...]
    right: str
    keep_order: bool = False


@dataclass(frozen=True, kw_only=True)
class DrillQuestion(Question):
    """A drill to go through. What it offers stands in the drill."""

    kind: ClassVar[str] = "drill"
    drill: str


@dataclass(frozen=True, kw_only=True)
class TriageUnit(Option):
    """Something that lies there in some condition, to be put where it belongs."""

    belongs: str
    """Id of a place."""
    dangerous: bool = False
    """True where putting it into a milder place than its own could hurt somebody."""
    figure: str = ""


@dataclass(frozen=True, kw_only=True)
class TriageQuestion(Question):
    """Units to sort into places, which stand from the mildest to the strictest."""

    kind: ClassVar[str] = "triage"
    offers: ClassVar[str] = "units"
    places: tuple[Option, ...]
    units: tuple[TriageUnit, ...]
    keep_order: bool = False


@dataclass(frozen=True, kw_only=True)
class Goal:
    """One thing that must hold of a bench when it is set as asked."""

    of: str
    """A reading of the bench, or ``low-flow`` or ``low-battery``: the alarms."""
    at_least: str = ""
    """A number in the reading's unit, as the next three; empty where it is not asked."""
    at_most: str = ""
    above: str = ""
    below: str = ""
    state: str = ""
    """``sounding`` or ``silent``, of an alarm. YAML key ``is``."""
    place: Place

    @property
    def tests(self) -> dict[str, str]:
        """YAML key of a test -> its number as written, for those that are asked."""
        asked = {
            "at-least": self.at_least,
            "at-most": self.at_most,
            "above": self.above,
            "below": self.below,
        }
        return {key: written for key, written in asked.items() if written}


@dataclass(frozen=True, kw_only=True)
class SettingQuestion(Question):
    """Controls of the bench in ``trial`` to set so that every goal holds."""

    kind: ClassVar[str] = "setting"
    goals: tuple[Goal, ...]
    """YAML key ``goal``."""
    first: str = ""
    """Id of a control: of the places that meet the goals only the lowest counts."""
    last: str = ""
    """The same with the highest."""
    near: int = 0
    """How many places off still count, where ``first`` or ``last`` is given."""

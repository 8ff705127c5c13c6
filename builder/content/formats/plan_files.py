"""Drawings as data, as they are written: numbers and names are still texts, references in them unreplaced."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from journeybook.content.model import Stand
from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class PlanFile:
    """What every kind of plan has."""

    kind: ClassVar[str]
    place: Place


@dataclass(frozen=True, kw_only=True)
class AtFile:
    """A named place on a scale."""

    at: str
    name: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class RangeFile:
    """From a number to another; with a name where it is something that lasts. YAML keys ``from`` and ``to``."""

    low: str
    high: str
    name: str = ""
    place: Place


@dataclass(frozen=True, kw_only=True)
class LayerFile:
    """One layer of a stack."""

    name: str
    note: str = ""
    look: str = "plain"
    thin: bool = False
    place: Place


@dataclass(frozen=True, kw_only=True)
class StackFile(PlanFile):
    """Layers in the way of something."""

    kind: ClassVar[str] = "stack"
    layers: tuple[LayerFile, ...]
    medium: str = ""


@dataclass(frozen=True, kw_only=True)
class StopFile:
    """One station of a path."""

    name: str
    note: str = ""
    place: Place


@dataclass(frozen=True, kw_only=True)
class PathFile(PlanFile):
    """Stations one after the other."""

    kind: ClassVar[str] = "path"
    stops: tuple[StopFile, ...]
    medium: str = ""


@dataclass(frozen=True, kw_only=True)
class GaugeFile(PlanFile):
    """A scale with what was read on it."""

    kind: ClassVar[str] = "gauge"
    label: str
    unit: str
    low: str
    high: str
    marks: tuple[AtFile, ...]
    pointers: tuple[AtFile, ...]
    good: RangeFile | None


@dataclass(frozen=True, kw_only=True)
class TimelineFile(PlanFile):
    """A stretch of time, what lasts in it and what happens in it."""

    kind: ClassVar[str] = "timeline"
    label: str
    unit: str
    low: str
    high: str
    events: tuple[AtFile, ...]
    spans: tuple[RangeFile, ...]


@dataclass(frozen=True, kw_only=True)
class AskFile:
    """A question of a decision."""

    id: str
    ask: str
    yes: str
    """Id of the point where yes leads. YAML key ``if-yes``; a bare ``yes`` is no text to every program."""
    no: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class DoFile:
    """What to do where a decision ends."""

    id: str
    do: str
    stop: bool = False
    place: Place


@dataclass(frozen=True, kw_only=True)
class AnswersFile:
    """The words on the arrows of a decision."""

    yes: str
    no: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class DecisionFile(PlanFile):
    """Questions that lead to what is to be done."""

    kind: ClassVar[str] = "decision"
    start: str
    points: tuple[AskFile | DoFile, ...]
    words: AnswersFile | None


@dataclass(frozen=True, kw_only=True)
class ScaleFile:
    """One side of a chart."""

    label: str
    unit: str
    low: str
    high: str
    step: str
    place: Place


@dataclass(frozen=True, kw_only=True)
class LineFile:
    """A line of a chart."""

    name: str
    points: tuple[tuple[str, str], ...]
    place: Place


@dataclass(frozen=True, kw_only=True)
class BenchLineFile:
    """A line of a chart that a bench gives: a reading along the places of one control."""

    name: str
    bench: str
    of: str
    along: str
    at: Stand
    """Where the other controls stand; the others as the bench says."""
    divide: str
    """By how much each value is divided, for another unit; empty where it is not."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class ChartFile(PlanFile):
    """Lines over a scale."""

    kind: ClassVar[str] = "chart"
    across: ScaleFile
    up: ScaleFile
    lines: tuple[LineFile | BenchLineFile, ...]
    levels: tuple[AtFile, ...]

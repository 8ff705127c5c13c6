"""A bench of kind ``assembly``: parts to put together in any order that keeps the rules."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import ClassVar

from journeybook.content.model.benches import Bench
from journeybook.content.model.questions import Rule
from journeybook.diagnostics.problem import Place

DEED = "deed"
"""The ``shape`` of a step that has no part."""


@dataclass(frozen=True, kw_only=True)
class PartSize:
    """How large a part is drawn, in units of the author's own."""

    wide: int
    high: int
    deep: int = 0
    """From front to back; 0 leaves it to the drawing."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class BenchPart:
    """A part, or a step that is done without one."""

    id: str
    name: str
    shape: str
    """One of ``drawing.exploded.parts.SHAPES``, or ``DEED``."""
    step: str = ""
    """What is done with it, where its name does not say so."""
    look: str = "plain"
    size: PartSize | None = None
    joins: str = ""
    """Id of the part that it goes on. The one that goes on nothing stands there from the beginning."""
    side: str = "above"
    shift: int = 0
    into: int = 0
    place: Place

    @property
    def said(self) -> str:
        """The step in words."""
        return self.step or self.name

    @property
    def is_deed(self) -> bool:
        """Whether nothing is put on."""
        return self.shape == DEED


@dataclass(frozen=True, kw_only=True)
class AssemblyBench(Bench):
    """Parts and deeds, and which of them come before which."""

    kind: ClassVar[str] = "assembly"

    parts: tuple[BenchPart, ...]
    rules: tuple[Rule, ...]

    @property
    def bases(self) -> tuple[BenchPart, ...]:
        """The parts that go on nothing; a sound bench has one."""
        return tuple(part for part in self.parts if not part.is_deed and not part.joins)

    @property
    def steps(self) -> tuple[BenchPart, ...]:
        """What is to be done, in the author's order: all but what stands there from the beginning."""
        return tuple(part for part in self.parts if part.is_deed or part.joins)

    @cached_property
    def pairs(self) -> tuple[tuple[str, str], ...]:
        """What comes before what, as the rules say it."""
        return tuple((rule.first, then) for rule in self.rules for then in rule.then)

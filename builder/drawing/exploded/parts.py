"""What an exploded drawing is made of. Lengths are in units of the author's own; only their ratios matter."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Side = Literal["above", "below", "left", "right"]
Axis = Literal["level", "upright"]

SIDES: tuple[Side, ...] = ("above", "below", "left", "right")
SHAPES = ("disc", "ring", "box", "tube", "cap", "plate", "hood", "strap", "rod")
ROUND = frozenset({"disc", "ring", "tube", "cap", "rod"})
"""Shapes that are round about the axis along which they go on."""
LOOKS = ("plain", "solid", "mesh", "pad", "pleats", "slots", "ribs", "window")
_OF_ROUND = ("plain", "solid", "mesh", "pad", "pleats", "slots", "ribs")
_OF_BOX = ("plain", "solid", "mesh", "pad", "pleats", "slots", "ribs", "window")
_LOOKS_OF: Mapping[str, tuple[str, ...]] = {
    "disc": _OF_ROUND,
    "cap": _OF_ROUND,
    "rod": _OF_ROUND,
    "ring": ("plain", "solid", "mesh", "ribs"),
    "tube": ("plain", "solid", "mesh", "ribs"),
    "box": _OF_BOX,
    "plate": _OF_BOX,
    "hood": ("plain", "mesh", "pad", "pleats", "slots", "ribs", "window"),
    "strap": ("plain",),
}
_LONG = frozenset({"tube", "rod"})


def looks_of(shape: str) -> tuple[str, ...]:
    """The looks that are seen on a shape."""
    return _LOOKS_OF[shape]


@dataclass(frozen=True, kw_only=True)
class Part:
    """A thing that lies there until it is put where it belongs."""

    id: str
    name: str
    said: str = ""
    """The step of putting it on, in words; letters go by it."""
    shape: str
    """One of ``SHAPES``."""
    look: str = "plain"
    """One of ``LOOKS``."""
    wide: float
    high: float
    deep: float = 0.0
    """From front to back, for shapes that are not round; 0 where the author leaves it to the drawing."""
    joins: str = ""
    """Id of the part that it goes on; empty for the one that everything else goes on."""
    side: Side = "above"
    """The side of that part on which it goes."""
    shift: float = 0.0
    """How far from the middle of that side: to the right, or down."""
    into: float = 0.0
    """How far it goes in."""
    layer: int = 0
    """How many steps must come before it, one after the other."""
    waits: frozenset[str] = frozenset()
    """Ids of the parts that must be on before it."""

    @property
    def axis(self) -> Axis:
        """The way along which it goes on; the way a part lies that goes on nothing follows from its shape."""
        if self.joins:
            return "level" if self.side in ("left", "right") else "upright"
        if self.shape in _LONG:
            return "level" if self.wide > self.high else "upright"
        return "level" if self.wide < self.high else "upright"


@dataclass(frozen=True, kw_only=True)
class Deed:
    """A step without a part: a check, a movement."""

    id: str
    name: str


@dataclass(frozen=True, kw_only=True)
class Assembly:
    """What lies there, and what is done; exactly one part goes on nothing."""

    parts: tuple[Part, ...]
    deeds: tuple[Deed, ...] = ()

    @property
    def base(self) -> Part:
        """The part that stands there from the beginning."""
        return next(part for part in self.parts if not part.joins)

    @property
    def from_the_base(self) -> tuple[Part, ...]:
        """The parts, each after the one that it goes on; among those that are free, the author's order."""
        found = [self.base]
        waiting = [part for part in self.parts if part.joins]
        while waiting:
            there = {part.id for part in found}
            free = min((part for part in waiting if part.joins in there), key=lambda part: part.layer)
            found.append(free)
            waiting.remove(free)
        return tuple(found)

    @property
    def letters(self) -> dict[str, str]:
        """A letter for each step, by its words, so that the letters tell nothing about the order."""
        steps = [(part.said or part.name, part.id) for part in self.parts if part.joins]
        steps += [(deed.name, deed.id) for deed in self.deeds]
        steps.sort(key=lambda step: (step[0].casefold(), step[1]))
        return {id: chr(ord("A") + index) for index, (_, id) in enumerate(steps)}

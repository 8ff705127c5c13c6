"""What the parts and names of an exploded drawing cover on the sheet."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.drawing.exploded.parts import ROUND, Part

LEVEL, UPRIGHT = 0.26, 0.24
"""How wide a circle seen from the side is drawn, and how high one seen from above, to its diameter."""


@dataclass(frozen=True)
class Box:
    """An upright rectangle on the sheet."""

    left: float
    top: float
    right: float
    foot: float

    def moved(self, x: float, y: float) -> Box:
        """The same elsewhere."""
        return Box(self.left + x, self.top + y, self.right + x, self.foot + y)

    def meets(self, other: Box, gap: float = 0.0) -> bool:
        """Whether the two overlap or are closer than ``gap``."""
        return (
            self.left < other.right + gap
            and other.left < self.right + gap
            and self.top < other.foot + gap
            and other.top < self.foot + gap
        )


@dataclass(frozen=True, kw_only=True)
class Label:
    """A part's name beside it."""

    box: Box
    lines: tuple[str, ...]
    """The name; none where its letter alone stands there."""
    look: str = "label"
    leader: Box | None = None
    """The line from the part to a name that stands off, as a box without breadth."""


@dataclass(frozen=True, kw_only=True)
class Lying:
    """One part: its middle when apart, its middle when in place, and how large it is."""

    part: Part
    x: float
    y: float
    home_x: float
    home_y: float
    scale: float
    label: Label | None

    @property
    def box(self) -> Box:
        """What it covers while it lies apart."""
        return body(self.part, self.scale).moved(self.x, self.y)

    @property
    def home(self) -> Box:
        """What it covers in place."""
        return body(self.part, self.scale).moved(self.home_x, self.home_y)


def depth_of(part: Part) -> float:
    """From front to back, in the author's units."""
    return part.deep or min(part.wide, part.high, 40.0)


def body(part: Part, scale: float) -> Box:
    """What a part covers, measured from its middle."""
    wide, high = part.wide * scale / 2, part.high * scale / 2
    if part.shape in ROUND and part.axis == "level":
        wide += high * LEVEL
    elif part.shape in ROUND:
        high += wide * UPRIGHT
    elif part.shape in ("box", "plate"):
        wide += depth_of(part) * scale * LEVEL / 2
        high += depth_of(part) * scale * UPRIGHT / 2
    return Box(-wide, -high, wide, high)

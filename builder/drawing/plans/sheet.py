"""A sheet to draw on: the few marks that all plans are made of, in the classes of the theme."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from xml.sax.saxutils import escape, quoteattr

Number = Fraction | float
"""A value on a scale: exact where it comes from a file."""

WIDTH = 400.0
"""Units across. At a phone's 390 pixels the smallest lettering, 13, is still over 12 pixels."""
LINE = 18.0
"""From one line of lettering to the next."""


@dataclass(frozen=True, kw_only=True)
class Drawn:
    """A drawing and the same in words."""

    svg: str
    words: str
    """For somebody who cannot see it; made of the drawing's own texts, so that it speaks their language."""


@dataclass
class Sheet:
    """Marks, in the order in which they are laid on each other."""

    marks: list[str] = field(default_factory=list)

    def rectangle(self, x: float, y: float, width: float, height: float, look: str, round: float = 3) -> None:
        """A box."""
        self.marks.append(
            f'<rect class="{look}" x="{short(x)}" y="{short(y)}" width="{short(width)}" height="{short(height)}"'
            f' rx="{short(round)}"/>'
        )

    def line(self, points: Sequence[tuple[float, float]], look: str) -> None:
        """A line through points."""
        way = "L".join(f"{short(x)} {short(y)}" for x, y in points)
        self.marks.append(f'<path class="{look}" d="M{way}"/>')

    def shape(self, points: Sequence[tuple[float, float]], look: str) -> None:
        """A closed outline."""
        way = "L".join(f"{short(x)} {short(y)}" for x, y in points)
        self.marks.append(f'<path class="{look}" d="M{way}Z"/>')

    def dots(self, points: Iterable[tuple[float, float]], look: str = "dots-fine") -> None:
        """A cloud of dots in one mark."""
        self.marks.append(
            f'<path class="{look}" d="{"".join(f"M{short(x)} {short(y)}h0" for x, y in points)}"/>'
        )

    def circle(self, x: float, y: float, radius: float, look: str) -> None:
        """A circle."""
        self.marks.append(f'<circle class="{look}" cx="{short(x)}" cy="{short(y)}" r="{short(radius)}"/>')

    def arrow(self, points: Sequence[tuple[float, float]], look: str = "ink", head: str = "fill-ink") -> None:
        """A line that ends in an arrow head; its last piece runs level or upright."""
        *_, (before_x, before_y), (x, y) = points
        step_x, step_y = _sign(x - before_x), _sign(y - before_y)
        self.line([*points[:-1], (x - 6 * step_x, y - 6 * step_y)], look)
        across_x, across_y = 4.4 * step_y, 4.4 * step_x
        back_x, back_y = x - 9 * step_x, y - 9 * step_y
        self.shape(
            [(x, y), (back_x + across_x, back_y + across_y), (back_x - across_x, back_y - across_y)], head
        )

    def text(self, x: float, y: float, lines: Sequence[str], look: str) -> None:
        """Lines of lettering; ``y`` is the foot of the first."""
        for index, words in enumerate(lines):
            self.marks.append(
                f'<text class="{look}" x="{short(x)}" y="{short(y + index * LINE)}">{escape(words)}</text>'
            )

    def named(self, part: str, marks: Sheet) -> None:
        """Marks as one part of the drawing, which can be pointed at by its id."""
        self.marks.append(f"<g id={quoteattr(part)}>{''.join(marks.marks)}</g>")

    def svg(self, height: float) -> str:
        """The whole drawing."""
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" class="figure" viewBox="0 0 {short(WIDTH)} {short(height)}">'
            f"{''.join(self.marks)}</svg>"
        )


def short(number: float) -> str:
    """A coordinate with one decimal at most."""
    return (
        f"{number:.1f}".removesuffix(".0").replace("-0", "0")
        if abs(number) < 0.05
        else f"{number:.1f}".removesuffix(".0")
    )


def spread(wanted: Sequence[float], gaps: Sequence[float]) -> list[float]:
    """Places for labels, in order: each as near to where it is wanted as the one before it allows.

    ``gaps`` tells how much room each needs below itself.
    """
    placed: list[float] = []
    for index, place in enumerate(wanted):
        placed.append(place if index == 0 else max(place, placed[-1] + gaps[index - 1]))
    return placed


def ticks(low: Number, high: Number, step: Number) -> list[Number]:
    """Marks of a scale from ``low`` to ``high``."""
    return [low + step * index for index in range(int((high - low) / step) + 1)]


def fitting_step(low: Number, high: Number, most: int) -> Fraction:
    """A step of 1, 2 or 5 times a power of ten that makes at most so many marks."""
    size = Fraction(1, 10**12)
    while True:
        for factor in (1, 2, 5):
            if (high - low) / (size * factor) <= most:
                return size * factor
        size *= 10


def first_mark(low: Number, step: Number) -> Number:
    """The first multiple of the step on a scale that begins at ``low``."""
    return -(-low // step) * step


def plain(number: Number) -> str:
    """A number as people write it: all its decimals where they end, without an empty one, with a real minus."""
    exact = Fraction(str(number)) if isinstance(number, float) else Fraction(number)
    sign, whole = "\N{MINUS SIGN}" if exact < 0 else "", abs(exact)
    digits = f"{round(whole * 10**_PLACES):0{_PLACES + 1}d}"
    decimals = digits[-_PLACES:].rstrip("0")
    return f"{sign}{digits[:-_PLACES]}{'.' if decimals else ''}{decimals}"


_PLACES = 6
"""Decimals that are shown at most."""


def _sign(number: float) -> int:
    return (number > 0) - (number < 0)

"""The drawing of a spot question: its parts can be touched, and each bears the letter that it has in the list.

It stands in the question itself, whatever else the page shows, because it is what is answered with. Which parts
there are and where they lie is known when the page is made, so that letters stand on paper and with scripts off too.
The script lights a part's frame; a part that is small for a finger, or that is no area, gets an area to touch.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from string import ascii_uppercase

from markupsafe import Markup, escape

from journeybook.content.model import Figure, SpotQuestion
from journeybook.drawing.marks import mark_places
from journeybook.drawing.parts import LEAST, SCREEN, Box, Drawn, Part, drawn, full_id, is_small
from journeybook.pages.filters import svg_for

_MARK = 10.5
"""Half the side of a letter's square in pixels on a phone; a drawing's own numbers stand in discs."""
_AT_320 = SCREEN / (SCREEN - 70)
"""A finger is as wide on a narrower phone, and the drawing smaller."""


def spot_figure(question: SpotQuestion, figure: Figure, slug: str, alt: str) -> Markup:
    """The figure as HTML; ``slug`` begins its ids and is the question's own, ``alt`` is plain text."""
    drawing = drawn(figure.svg)
    parts = {
        spot.id: part
        for spot in question.spots
        if (part := drawing.parts.get(full_id(spot.part, figure.id))) is not None
    }
    svg = str(svg_for(figure, slug))
    for spot, part in parts.items():
        svg = re.sub(
            rf'(\bid="{re.escape(slug)}-{re.escape(part.id)}")', rf'\1 data-spot="{spot}"', svg, count=1
        )
    start = svg.index(">") + 1
    end = svg.rindex("</svg>")
    beneath, above = "".join(_beneath(parts, drawing)), "".join(_above(parts, drawing))
    return Markup('<div class="question-figure spot-figure" role="img" aria-label="{}">{}</div>').format(
        escape(alt), Markup(svg[:start] + beneath + svg[start:end] + above + svg[end:])
    )


def letters(question: SpotQuestion) -> dict[str, str]:
    """Spot -> its letter while the list stands as written."""
    return {spot.id: ascii_uppercase[at] for at, spot in enumerate(question.spots)}


def _beneath(parts: dict[str, Part], drawing: Drawn) -> Iterator[str]:
    """Areas for what is no area itself; under the drawing, so that every other part is found first."""
    areas = [
        (part.box, spot)
        for spot, part in parts.items()
        if part.box is not None and not part.filled and not is_small(part, drawing)
    ]
    yield from _touched(areas)


def _above(parts: dict[str, Part], drawing: Drawn) -> Iterator[str]:
    least = LEAST * drawing.pixel * _AT_320
    small = [
        (_at_least(part.box, least), spot)
        for spot, part in parts.items()
        if part.box is not None and min(part.box.width, part.box.height) < least
    ]
    for spot, part in parts.items():
        if part.box is not None:
            outer, inner = part.box.grown(4 * drawing.pixel), part.box.grown(1 * drawing.pixel)
            yield f'<g class="spot-frame" data-frame="{spot}">{_rect(outer)}{_rect(inner, "spot-inner")}</g>'
    yield from _touched(small)
    radius = _MARK * drawing.pixel
    for (spot, _), letter, middle in zip(
        parts.items(), ascii_uppercase, mark_places(list(parts.values()), drawing, radius), strict=False
    ):
        if middle is not None:
            x, y = (f"{number:.1f}" for number in middle)
            yield (
                f'<g class="spot-mark" data-spot="{spot}" transform="translate({x} {y}) scale({drawing.pixel:.3f})">'
                f'<rect x="-{_MARK:g}" y="-{_MARK:g}" width="{2 * _MARK:g}" height="{2 * _MARK:g}" rx="2"/>'
                f'<text class="label-strong middle" y="5.2">{letter}</text></g>'
            )


def _touched(areas: Iterable[tuple[Box, str]]) -> Iterator[str]:
    """The larger one first, so that a smaller one inside of it lies on top."""
    for box, spot in sorted(areas, key=lambda area: -area[0].width * area[0].height):
        yield _rect(box, "spot-area", f' data-spot="{spot}"')


def _at_least(box: Box, least: float) -> Box:
    wide, high = max(0.0, least - box.width) / 2, max(0.0, least - box.height) / 2
    return Box(box.left - wide, box.top - high, box.right + wide, box.bottom + high)


def _rect(box: Box, name: str = "", more: str = "") -> str:
    named = f' class="{name}"' if name else ""
    return (
        f'<rect{named}{more} x="{box.left:.1f}" y="{box.top:.1f}" width="{box.width:.1f}" '
        f'height="{box.height:.1f}"/>'
    )

"""The drawing of a spot question on paper: each named part bears the letter that it has in the list of this form."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from journeybook.content.model import Figure, SpotQuestion
from journeybook.content.wording import Wording
from journeybook.drawing.marks import mark_places
from journeybook.drawing.parts import drawn, full_id
from journeybook.drawing.xml_text import escape
from journeybook.paper.plain_picture import Picture, picture_of, plain_svg

_HALF = 10.5
"""Half the side of a letter's square, in units of a drawing as wide as a phone."""


def spot_picture(
    question: SpotQuestion,
    figure: Figure,
    wording: Wording,
    order: Sequence[str],
    marks: Sequence[str],
    number: str,
) -> Picture:
    """The figure with ``marks`` at its parts, which are those of the spots in ``order``; ``number`` names the file."""
    drawing = drawn(figure.svg)
    spots = {spot.id: spot for spot in question.spots}
    lettered = [
        (mark, part)
        for name, mark in zip(order, marks, strict=True)
        if (part := drawing.parts.get(full_id(spots[name].part, figure.id))) is not None
    ]
    radius = _HALF * drawing.pixel
    # Where letters go must not tell the order in which they were placed: from one form to the next they stay there.
    by_id = sorted(lettered, key=lambda one: one[1].id)
    places = mark_places([part for _, part in by_id], drawing, radius)
    signs = "".join(
        _sign(mark, middle, drawing.pixel)
        for (mark, _), middle in zip(by_id, places, strict=True)
        if middle is not None
    )
    end = figure.svg.rindex("</svg>")
    svg = figure.svg[:end] + signs + figure.svg[end:]
    return replace(picture_of(figure, wording), name=f"spot-{number}.svg", data=plain_svg(svg))


def _sign(mark: str, middle: tuple[float, float], pixel: float) -> str:
    return (
        f'<g transform="translate({middle[0]:.1f} {middle[1]:.1f}) scale({pixel:.3f})">'
        f'<rect class="ink fill-paper" x="-{_HALF}" y="-{_HALF}" width="{2 * _HALF}" height="{2 * _HALF}" rx="2"/>'
        f'<text class="label-strong middle" y="5.2">{escape(mark)}</text></g>'
    )

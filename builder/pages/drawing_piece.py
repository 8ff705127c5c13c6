"""A part of a drawing as a small drawing of its own."""

from __future__ import annotations

from markupsafe import Markup

from journeybook.content.model import Figure
from journeybook.drawing.excerpt import excerpt
from journeybook.drawing.parts import drawn, full_id

_AROUND = 8.0
"""Units of the drawing around the part."""
_MOST = (240, 168)
"""Pixels on the page, as far as lettering stays readable."""
_SMALLEST = 0.95
"""At which the smallest lettering, 13, is still over 12 pixels high."""
_ENLARGED = 1.25
"""As whole drawings are, so that a piece is not taken for something else."""


def piece_of(figure: Figure, part: str, name: str) -> Markup:
    """An SVG of the part by itself; empty where the drawing has none, or where it is not known where that lies.

    ``name`` tells it from every other piece of the leaf.
    """
    drawing = drawn(figure.svg)
    found = drawing.parts.get(full_id(part, figure.id))
    if found is None or found.box is None:
        return Markup("")
    box = found.box.grown(_AROUND)
    marks = excerpt(figure.svg, found.id, f"{name}-")
    scale = min(_ENLARGED, _MOST[0] / box.width, _MOST[1] / box.height)
    if "<text" in marks:
        scale = max(_SMALLEST, scale)
    return Markup('<svg class="figure" viewBox="{} {} {} {}" width="{}" height="{}">{}</svg>').format(
        _short(box.left),
        _short(box.top),
        _short(box.width),
        _short(box.height),
        round(box.width * scale),
        round(box.height * scale),
        Markup(marks),
    )


def _short(number: float) -> str:
    return f"{number:.1f}".removesuffix(".0")

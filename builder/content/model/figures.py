"""Drawings, and the glossary that shows them."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.diagnostics.problem import Place


@dataclass(frozen=True, kw_only=True)
class Term:
    """A word of the trade, in words.yml."""

    id: str
    word: str
    meaning: str
    figure: str = ""
    part: str = ""
    """Id of an element of the figure's drawing, as its author wrote it: the glossary shows that piece of it."""
    place: Place


@dataclass(frozen=True, kw_only=True)
class Figure:
    """A drawing: from the SVG file beside figures/ID.yml, or made from the ``draw`` in it."""

    id: str
    title: str
    alt: str
    """What the drawing shows, for someone who cannot see it; complete enough to learn from."""
    caption: str = ""
    svg: str
    """The checked SVG text, ids prefixed with the figure's id."""
    drawn_from: tuple[str, ...] = ()
    """Ids of the benches that give lines of it."""
    place: Place

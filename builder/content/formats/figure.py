"""What figures/ID.yml may hold: a drawing that lies beside it, or one that is made from data."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from journeybook.content.formats.parts import LINE, SENTENCES
from journeybook.content.formats.plan_files import PlanFile
from journeybook.content.formats.plans import PLAN
from journeybook.diagnostics.problem import Place
from journeybook.source.reading import Reading
from journeybook.source.shapes import Field, Record


@dataclass(frozen=True, kw_only=True)
class FigureFile:
    """figures/ID.yml as read."""

    title: str
    alt: str
    """Empty where the builder words it from ``draw``."""
    caption: str
    draw: PlanFile | None
    """None where an SVG file lies beside it."""
    place: Place


def _fields(alt: Field) -> list[Field]:
    return [
        Field("title", LINE, "What the drawing shows.", "The guard, laid out"),
        alt,
        Field(
            "caption",
            SENTENCES,
            "A line under the drawing.",
            "The sleeve slides inside the collar.",
            default="",
        ),
        Field(
            "draw",
            PLAN,
            "The drawing as data, in place of an SVG file beside it.",
            {"kind": "path", "stops": [{"name": "Isolate"}, {"name": "Set the guard"}]},
            default=None,
        ),
    ]


class _FigureRecord(Record):
    """A drawing made from data words itself, so only one that somebody has drawn needs ``alt``."""

    def __init__(self, with_svg: list[Field], drawn: list[Field]) -> None:
        super().__init__(FigureFile, "figure", with_svg)
        self._drawn = Record(FigureFile, "figure", drawn)

    def read_keys(self, reading: Reading, data: dict[str, Any], trail: str) -> Any:
        if "draw" in data:
            return self._drawn.read_keys(reading, data, trail)
        return super().read_keys(reading, data, trail)

    def schema(self) -> dict[str, Any]:
        return {**self._drawn.schema(), "anyOf": [{"required": ["alt"]}, {"required": ["draw"]}]}


FIGURE = _FigureRecord(
    _fields(
        Field(
            "alt",
            SENTENCES,
            "The drawing in words, complete enough to learn from.",
            "From the top: collar, sleeve, …",
        )
    ),
    _fields(
        Field(
            "alt",
            SENTENCES,
            "The drawing in words, complete enough to learn from; with `draw` it may be left out.",
            "From the top: collar, sleeve, …",
            default="",
        )
    ),
)

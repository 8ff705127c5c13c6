"""Stations one after the other, with an arrow between each:

where something passes, or what is done in which order.
"""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.drawing.plans.letters import wrapped
from journeybook.drawing.plans.sheet import LINE, WIDTH, Drawn, Sheet

_ARROW = 24.0


@dataclass(frozen=True, kw_only=True)
class Stop:
    """One station."""

    name: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Path:
    """The stations in their order, and what passes them."""

    stops: tuple[Stop, ...]
    medium: str = ""


def draw_path(path: Path) -> Drawn:
    """Boxes from top to bottom, numbered."""
    sheet = Sheet()
    top = 4.0
    if path.medium:
        sheet.text(200, top + 13, [path.medium], "small middle")
        sheet.arrow([(200, top + 20), (200, top + 20 + _ARROW)], "act", "fill-act")
        top += 20 + _ARROW
    for index, stop in enumerate(path.stops):
        if index:
            sheet.arrow([(200, top), (200, top + _ARROW)])
            top += _ARROW
        names = wrapped(stop.name, WIDTH - 92, "label-strong")
        notes = wrapped(stop.note, WIDTH - 92, "small")
        height = 16 + LINE * (len(names) + len(notes))
        box = Sheet()
        box.rectangle(20, top, 42, height, "tint-1")
        box.rectangle(20, top, WIDTH - 40, height, "ink")
        box.line([(62, top), (62, top + height)], "thin")
        box.text(41, top + height / 2 + 7, [str(index + 1)], "number middle")
        box.text(76, top + 21, names, "label-strong")
        box.text(76, top + 21 + LINE * len(names) - 1, notes, "small")
        sheet.named(f"stop-{index + 1}", box)
        top += height
    told = [f"{index}. {_said(stop)}" for index, stop in enumerate(path.stops, start=1)]
    return Drawn(
        svg=sheet.svg(top + 4), words=" ".join([f"{path.medium}:" if path.medium else "", *told]).strip()
    )


def _said(stop: Stop) -> str:
    return f"{stop.name} ({stop.note})." if stop.note else f"{stop.name}."

"""Layers on one another, drawn apart, in the way of something that passes through all of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from journeybook.drawing.plans.letters import wrapped
from journeybook.drawing.plans.sheet import LINE, WIDTH, Drawn, Sheet, spread

_LEFT, _RIGHT = 14.0, 168.0
_LABELS = 198.0


@dataclass(frozen=True, kw_only=True)
class Layer:
    """One layer."""

    name: str
    note: str = ""
    look: str = "plain"
    """One of ``LOOKS``."""
    thin: bool = False


@dataclass(frozen=True, kw_only=True)
class Stack:
    """The layers from the first that is met to the last, and what meets them."""

    layers: tuple[Layer, ...]
    medium: str = ""


def draw_stack(stack: Stack) -> Drawn:
    """Bands from top to bottom, each with its name beside it, and the way through them."""
    sheet = Sheet()
    top = 50.0 if stack.medium else 12.0
    names = [wrapped(layer.name, WIDTH - _LABELS - 4, "label-strong") for layer in stack.layers]
    notes = [wrapped(layer.note, WIDTH - _LABELS - 4, "small") for layer in stack.layers]
    needed = [LINE * (len(name) + len(note)) + 12 for name, note in zip(names, notes, strict=True)]
    tops: list[float] = []
    for layer, room in zip(stack.layers, needed, strict=True):
        tops.append(top)
        top += max(_height(layer) + 16, room)
    bottom = top
    middle = (_LEFT + _RIGHT) / 2
    if stack.medium:
        sheet.text(middle, 14, [stack.medium], "small middle")
        for x in (middle - 42, middle, middle + 42):
            sheet.arrow([(x, 22), (x, 44)], "act", "fill-act")
            sheet.arrow([(x, bottom - 4), (x, bottom + 20)], "act", "fill-act")
        bottom += 24
    centres = [at + _height(layer) / 2 for at, layer in zip(tops, stack.layers, strict=True)]
    wanted = [centre - 4 for centre in centres]
    for index, (layer, at, label) in enumerate(
        zip(stack.layers, tops, spread(wanted, needed), strict=True), start=1
    ):
        band = Sheet()
        LOOKS[layer.look](band, at, _height(layer))
        band.line([(_RIGHT + 4, at + _height(layer) / 2), (_LABELS - 6, at + _height(layer) / 2)], "thin")
        band.text(_LABELS, label + 9, names[index - 1], "label-strong")
        band.text(_LABELS, label + 8 + LINE * len(names[index - 1]), notes[index - 1], "small")
        sheet.named(f"layer-{index}", band)
    told = [
        f"{index}. {layer.name}{f' ({layer.note})' if layer.note else ''}."
        for index, layer in enumerate(stack.layers, start=1)
    ]
    return Drawn(
        svg=sheet.svg(bottom + 4), words=" ".join([f"{stack.medium}:" if stack.medium else "", *told]).strip()
    )


def _height(layer: Layer) -> float:
    return 16.0 if layer.thin else 34.0


def _box(sheet: Sheet, top: float, height: float, look: str) -> None:
    sheet.rectangle(_LEFT, top, _RIGHT - _LEFT, height, look)


def _mesh(sheet: Sheet, top: float, height: float) -> None:
    _box(sheet, top, height, "ink fill-paper")
    for x in range(int(_LEFT) + 8, int(_RIGHT), 9):
        sheet.line([(x, top + 2), (x, top + height - 2)], "thin")
    for y in range(int(top) + 6, int(top + height) - 2, 7):
        sheet.line([(_LEFT + 2, y), (_RIGHT - 2, y)], "thin")


def _pad(sheet: Sheet, top: float, height: float) -> None:
    _box(sheet, top, height, "ink tint-1")
    sheet.dots(
        (x + (row % 2) * 5, top + 6 + 7 * row)
        for row in range(int((height - 6) / 7))
        for x in range(int(_LEFT) + 7, int(_RIGHT) - 8, 10)
    )


def _pleats(sheet: Sheet, top: float, height: float) -> None:
    _box(sheet, top, height, "ink fill-paper")
    edge = [
        (_LEFT + 4 + 6 * index, top + (4 if index % 2 else height - 4))
        for index in range(int((_RIGHT - _LEFT - 8) / 6) + 1)
    ]
    sheet.line(edge, "thin")


def _plate(sheet: Sheet, top: float, height: float) -> None:
    _box(sheet, top, height, "ink tint-2")


def _plain(sheet: Sheet, top: float, height: float) -> None:
    _box(sheet, top, height, "ink tint-1")


LOOKS: dict[str, Callable[[Sheet, float, float], None]] = {
    "mesh": _mesh,
    "pad": _pad,
    "pleats": _pleats,
    "plate": _plate,
    "plain": _plain,
}
"""How a layer can look; each differs in line, not in shade alone, so that a photocopy keeps it."""

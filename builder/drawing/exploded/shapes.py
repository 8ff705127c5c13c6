"""How each shape is drawn: seen a little from the right and from above, in the line of the house.

A look is made of lines and dots, not of shade alone, so that a photocopy keeps it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from journeybook.drawing.exploded.boxes import LEVEL, UPRIGHT, depth_of
from journeybook.drawing.exploded.parts import ROUND, Part
from journeybook.drawing.plans.sheet import Sheet, short

_Dot = tuple[float, float]


class Pen(Sheet):
    """A sheet with curves."""

    def path(self, way: str, look: str) -> None:
        """A path as SVG writes it."""
        self.marks.append(f'<path class="{look}" d="{way}"/>')

    def ellipse(self, x: float, y: float, rx: float, ry: float, look: str) -> None:
        """An ellipse."""
        self.marks.append(
            f'<ellipse class="{look}" cx="{short(x)}" cy="{short(y)}" rx="{short(rx)}" ry="{short(ry)}"/>'
        )

    def strokes(self, lines: Sequence[tuple[_Dot, _Dot]], look: str) -> None:
        """Many straight lines in one mark."""
        if lines:
            way = "".join(f"M{short(a)} {short(b)}L{short(c)} {short(d)}" for (a, b), (c, d) in lines)
            self.path(way, look)


def draw_shape(part: Part, x: float, y: float, scale: float) -> Pen:
    """The part with its middle at (x, y)."""
    pen = Pen()
    if part.shape in ROUND:
        _draw_round(pen, part, x, y, scale)
    else:
        _OTHERS[part.shape](pen, part, x, y, scale)
    return pen


# Round shapes -------------------------------------------------------------------------------------------


def _draw_round(pen: Pen, part: Part, x: float, y: float, scale: float) -> None:
    """A cylinder along the axis; its shape and look tell what is on the end that is seen."""
    level = part.axis == "level"
    half = (part.wide if level else part.high) * scale / 2
    radius = (part.high if level else part.wide) * scale / 2
    rx, ry = (radius * LEVEL, radius) if level else (radius, radius * UPRIGHT)
    end_x, end_y = (x + half, y) if level else (x, y - half)
    hollow = part.shape in _HOLLOW
    shell = "ink tint-2" if part.shape == "rod" or (hollow and part.look == "solid") else "ink fill-paper"
    if level:
        pen.path(
            f"M{short(x - half)} {short(y - radius)}H{short(x + half)}"
            f"A{short(rx)} {short(ry)} 0 0 1 {short(x + half)} {short(y + radius)}H{short(x - half)}"
            f"A{short(rx)} {short(ry)} 0 0 1 {short(x - half)} {short(y - radius)}Z",
            shell,
        )
    else:
        pen.path(
            f"M{short(x - radius)} {short(y - half)}V{short(y + half)}"
            f"A{short(rx)} {short(ry)} 0 0 0 {short(x + radius)} {short(y + half)}V{short(y - half)}"
            f"A{short(rx)} {short(ry)} 0 0 0 {short(x - radius)} {short(y - half)}Z",
            shell,
        )
    bands = _bands(part, half, scale)
    if bands:
        pen.path("".join(_band(level, x, y, at, radius, rx, ry) for at in bands), "thin")
    if hollow and part.look == "mesh":
        # The round of the near end runs on into the shell, so the mesh begins where it is furthest in.
        if level:
            _draw_mesh(pen, x - half, y - radius, 2 * half - rx, 2 * radius)
        else:
            _draw_mesh(pen, x - radius, y - half + ry, 2 * radius, 2 * half - ry)
    _draw_face(pen, part, end_x, end_y, rx, ry)


def _bands(part: Part, half: float, scale: float) -> list[float]:
    """Where lines run round the shell, from the middle towards the end that is seen."""
    if part.look == "ribs":
        count = max(2, int(2 * half / 6))
        return [-half + 2 * half * (index + 1) / (count + 1) for index in range(count)]
    if part.shape == "cap" and half > 4:
        return [-half + min(half * 0.5, 7 * scale)]
    return []


def _band(level: bool, x: float, y: float, at: float, radius: float, rx: float, ry: float) -> str:
    """The seen half of a circle round the shell."""
    if level:
        return f"M{short(x + at)} {short(y - radius)}A{short(rx)} {short(ry)} 0 0 0 {short(x + at)} {short(y + radius)}"
    return f"M{short(x - radius)} {short(y - at)}A{short(rx)} {short(ry)} 0 0 0 {short(x + radius)} {short(y - at)}"


_HOLLOW = ("ring", "tube")
_FILLS = {
    "solid": "ink tint-2",
    "mesh": "ink fill-paper",
    "pleats": "ink fill-paper",
    "slots": "ink fill-card",
}


def _draw_face(pen: Pen, part: Part, x: float, y: float, rx: float, ry: float) -> None:
    hollow = part.shape in _HOLLOW
    seen = part.look if not hollow or part.look == "solid" else "plain"
    pen.ellipse(x, y, rx, ry, _FILLS.get(seen, "ink tint-1"))

    def on(points: tuple[_Dot, _Dot], by: float = 0.92) -> tuple[_Dot, _Dot]:
        """Two points of a circle of radius 1, on this ellipse."""
        (a, b), (c, d) = points
        return (x + a * rx * by, y + b * ry * by), (x + c * rx * by, y + d * ry * by)

    count = max(3, min(9, int(max(rx, ry) / 4)))
    if hollow:
        hole = 0.62 if part.shape == "ring" else 0.7
        pen.ellipse(x, y, rx * hole, ry * hole, "ink fill-paper")
    elif part.look == "mesh":
        pen.strokes([on(chord) for slope in (1, -1) for chord in _chords(count, slope)], "hatch")
    elif part.look == "pleats":
        upright = part.axis == "level"
        pen.strokes([on(chord) for chord in _chords(count, None, upright=upright)], "hatch")
    elif part.look == "pad":
        spread = range(-3, 4)
        dots = [
            (x + (column + (row % 2) / 2) * rx / 4, y + row * ry / 4)
            for row in spread
            for column in spread
            if (column + (row % 2) / 2) ** 2 + row**2 < 11
        ]
        pen.dots(dots)
    elif part.look == "slots":
        upright = part.axis == "level"
        pen.strokes([on(chord, 0.72) for chord in _chords(4, None, upright=not upright)], "bold")
    elif part.shape == "cap":
        pen.ellipse(x, y, rx * 0.55, ry * 0.55, "thin")


def _chords(count: int, slope: int | None, *, upright: bool = False) -> list[tuple[_Dot, _Dot]]:
    """Parallel lines across a circle of radius 1: slanting one way or the other, level or upright."""
    found = []
    for index in range(count):
        off = (2 * index + 1) / count - 1
        reach = math.sqrt(1 - off * off)
        if slope is None:
            found.append(((off, -reach), (off, reach)) if upright else ((-reach, off), (reach, off)))
        else:
            turn = math.sqrt(0.5)
            found.append(
                (
                    ((off - reach) * turn, (off + reach) * turn * slope),
                    ((off + reach) * turn, (off - reach) * turn * slope),
                )
            )
    return found


# Other shapes -------------------------------------------------------------------------------------------


def _box(pen: Pen, part: Part, x: float, y: float, scale: float) -> None:
    wide, high = part.wide * scale, part.high * scale
    dx, dy = depth_of(part) * scale * LEVEL, depth_of(part) * scale * UPRIGHT
    left, top = x - wide / 2 - dx / 2, y - high / 2 + dy / 2
    right, foot = left + wide, top + high
    pen.shape([(left, top), (left + dx, top - dy), (right + dx, top - dy), (right, top)], "ink fill-card")
    pen.shape([(right, top), (right + dx, top - dy), (right + dx, foot - dy), (right, foot)], "ink tint-1")
    front = {"solid": "ink tint-2", "plain": "ink fill-paper"}.get(part.look, "ink fill-paper")
    pen.rectangle(left, top, wide, high, front, 2)
    _draw_front(pen, part.look, left, top, wide, high)


def _draw_front(pen: Pen, look: str, left: float, top: float, wide: float, high: float) -> None:
    right, foot = left + wide, top + high
    if look == "mesh":
        _draw_mesh(pen, left, top, wide, high)
    elif look in ("ribs", "pleats"):
        count = max(2, int(wide / 6))
        xs = [left + wide * (index + 1) / (count + 1) for index in range(count)]
        pen.strokes([((at, top + 3), (at, foot - 3)) for at in xs], "thin" if look == "ribs" else "hatch")
    elif look == "pad":
        pen.dots(
            (left + 5 + column * 8 + (row % 2) * 4, top + 5 + row * 7)
            for row in range(int((high - 6) / 7))
            for column in range(int((wide - 10) / 8))
        )
    elif look == "slots":
        pen.strokes(
            [
                ((left + wide * 0.2, top + high * at), (right - wide * 0.2, top + high * at))
                for at in (0.3, 0.5, 0.7)
            ],
            "bold",
        )
    elif look == "window":
        pen.rectangle(left + wide * 0.16, top + high * 0.2, wide * 0.68, high * 0.45, "thin tint-1", 3)


def _draw_mesh(pen: Pen, left: float, top: float, wide: float, high: float) -> None:
    """Lines that cross, over an upright rectangle."""
    right = left + wide
    lines = []
    for index in range(1, int((wide + high) / 7)):
        at = index * 7.0
        lines.append(
            (
                (left + min(at, wide), top + max(0, at - wide)),
                (left + max(0, at - high), top + min(at, high)),
            )
        )
        lines.append(
            (
                (right - min(at, wide), top + max(0, at - wide)),
                (right - max(0, at - high), top + min(at, high)),
            )
        )
    pen.strokes(lines, "hatch")


def _hood(pen: Pen, part: Part, x: float, y: float, scale: float) -> None:
    wide, high = part.wide * scale, part.high * scale
    left, right, top, foot = x - wide / 2, x + wide / 2, y - high / 2, y + high / 2
    rim = high * 0.14
    pen.path(
        f"M{short(left)} {short(foot - rim)}C{short(left + wide * 0.02)} {short(top + high * 0.2)}"
        f" {short(x - wide * 0.3)} {short(top)} {short(x)} {short(top)}"
        f"S{short(right - wide * 0.02)} {short(top + high * 0.2)} {short(right)} {short(foot - rim)}"
        f"Q{short(x)} {short(foot + rim)} {short(left)} {short(foot - rim)}Z",
        "ink fill-paper",
    )
    pen.path(
        f"M{short(left)} {short(foot - rim)}Q{short(x)} {short(foot + rim)} {short(right)} {short(foot - rim)}"
        f"V{short(foot - rim * 0.2)}Q{short(x)} {short(foot + rim)} {short(left)} {short(foot - rim * 0.2)}Z",
        "ink tint-1",
    )
    if part.look == "window":
        pane_left, pane_right = x - wide * 0.26, x + wide * 0.36
        pen.path(
            f"M{short(pane_left)} {short(y - high * 0.16)}Q{short(x)} {short(y - high * 0.22)}"
            f" {short(pane_right)} {short(y - high * 0.16)}L{short(pane_right + wide * 0.02)} {short(y + high * 0.1)}"
            f"Q{short(x)} {short(y + high * 0.15)} {short(pane_left - wide * 0.02)} {short(y + high * 0.1)}Z",
            "ink tint-2",
        )
        pen.path(
            f"M{short(pane_left + 5)} {short(y + high * 0.04)}l{short(wide * 0.1)} {short(-high * 0.14)}"
            f"m{short(wide * 0.04)} {short(high * 0.14)}l{short(wide * 0.1)} {short(-high * 0.14)}",
            "thin",
        )
    elif part.look != "plain":
        _draw_front(pen, part.look, x - wide * 0.26, y - high * 0.14, wide * 0.52, high * 0.34)


def _strap(pen: Pen, part: Part, x: float, y: float, scale: float) -> None:
    wide, high = part.wide * scale, part.high * scale
    if part.axis == "level" and high > wide:
        _strap_upright(pen, x, y, wide, high)
        return
    left, right, top, foot = x - wide / 2, x + wide / 2, y - high / 2, y + high / 2
    sag = min(high * 0.3, 8.0)
    inner = high - sag
    band = f"M{short(left)} {short(top)}Q{short(x)} {short(top + 2 * sag)} {short(right)} {short(top)}"
    pen.path(
        f"{band}v{short(inner)}Q{short(x)} {short(foot + sag)} {short(left)} {short(top + inner)}Z",
        "ink tint-1",
    )
    pen.path(
        f"M{short(left + 3)} {short(top + 5)}Q{short(x)} {short(top + 5 + 2 * sag)} {short(right - 3)} {short(top + 5)}"
        f"M{short(left + 3)} {short(top + inner - 5)}Q{short(x)} {short(top + inner - 5 + 2 * sag)}"
        f" {short(right - 3)} {short(top + inner - 5)}",
        "hatch",
    )
    buckle = min(wide * 0.16, 20.0)
    pen.rectangle(right - buckle, top - 2, buckle, inner + 4, "ink fill-card", 3)
    pen.rectangle(right - buckle * 0.72, top + 4, buckle * 0.44, max(inner - 8, 2), "thin fill-paper", 2)


def _strap_upright(pen: Pen, x: float, y: float, wide: float, high: float) -> None:
    left, top, foot = x - wide / 2, y - high / 2, y + high / 2
    bow = min(wide * 0.3, 8.0)
    band = wide - bow
    pen.path(
        f"M{short(left + bow)} {short(top)}h{short(band)}Q{short(left + band - bow)} {short(y)}"
        f" {short(left + wide)} {short(foot)}h{short(-band)}Q{short(left - bow)} {short(y)}"
        f" {short(left + bow)} {short(top)}Z",
        "ink tint-1",
    )
    pen.path(
        f"M{short(left + bow + 4)} {short(top + 4)}Q{short(left - bow + 4)} {short(y)} {short(left + bow + 4)}"
        f" {short(foot - 4)}M{short(left + wide - 4)} {short(top + 4)}Q{short(left + band - bow - 4)} {short(y)}"
        f" {short(left + wide - 4)} {short(foot - 4)}",
        "hatch",
    )
    buckle = min(high * 0.16, 22.0)
    pen.rectangle(left + bow - 2, top, band + 4, buckle, "ink fill-card", 3)
    pen.rectangle(left + bow + 4, top + buckle * 0.28, max(band - 8, 2), buckle * 0.44, "thin fill-paper", 2)


_OTHERS: dict[str, Callable[[Pen, Part, float, float, float], None]] = {
    "box": _box,
    "plate": _box,
    "hood": _hood,
    "strap": _strap,
}

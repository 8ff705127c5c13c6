"""The whole exploded drawing: parts apart, the ways along which they go on, and the steps that have no part."""

from __future__ import annotations

from dataclasses import dataclass
from xml.sax.saxutils import quoteattr

from journeybook.drawing.exploded.boxes import Lying
from journeybook.drawing.exploded.labels import LETTER
from journeybook.drawing.exploded.parts import Assembly, Deed
from journeybook.drawing.exploded.places import Places, places, way_between
from journeybook.drawing.exploded.shapes import draw_shape
from journeybook.drawing.plans.letters import wrapped
from journeybook.drawing.plans.sheet import LINE, WIDTH, Sheet

_COLUMN = WIDTH / 2
_DEED_TEXT = _COLUMN - 60


@dataclass(frozen=True, kw_only=True)
class Exploded:
    """The drawing, and how far each part moves when it is put on.

    Ids in it: ``PREFIX-part-ID`` the part, ``PREFIX-label-ID`` its name, ``PREFIX-way-ID`` the line it comes along,
    ``PREFIX-tick-ID`` the tick of a step without a part.
    """

    svg: str
    moves: dict[str, tuple[float, float]]
    """Part -> how far right and down, in units of the drawing."""
    ways: dict[str, tuple[str, ...]]
    """Part -> the parts that come along its line: itself, and what goes on it."""


def draw_exploded(assembly: Assembly, prefix: str) -> Exploded | None:
    """The drawing with ids that begin with ``prefix``; None where the parts do not fit on a sheet."""
    found = places(assembly)
    if found is None:
        return None
    sheet = Sheet()
    by_id = {one.part.id: one for one in found.lying}
    for one in found.lying:
        if one.part.joins:
            way = Sheet()
            way.line(_way(by_id[one.part.joins], one), "hidden-line")
            _named(sheet, f"{prefix}-way-{one.part.id}", way)
    heights = _heights(found)
    for one in sorted(found.lying, key=lambda each: heights[each.part.id]):
        _draw_part(sheet, one, assembly, prefix)
    foot = _draw_deeds(sheet, assembly, prefix, found.foot)
    return Exploded(
        svg=sheet.svg(foot),
        moves={
            one.part.id: (round(one.home_x - one.x, 1), round(one.home_y - one.y, 1))
            for one in found.lying
            if one.part.joins
        },
        ways={part.id: _carried(assembly, part.id) for part in assembly.parts if part.joins},
    )


def _carried(assembly: Assembly, part: str) -> tuple[str, ...]:
    """The part and everything that goes on it, directly or not."""
    found = [part]
    for each in assembly.from_the_base:
        if each.joins in found:
            found.append(each.id)
    return tuple(found)


def _heights(found: Places) -> dict[str, int]:
    """How near each part is to who looks: what is above or on the right covers what it goes on."""
    heights: dict[str, int] = {}
    for one in found.lying:
        nearer = 1 if one.part.side in ("above", "right") else -1
        heights[one.part.id] = heights[one.part.joins] + nearer if one.part.joins else 0
    return heights


def _way(base: Lying, one: Lying) -> list[tuple[float, float]]:
    box = way_between(one.part.side, base.box, one.box, one.x, one.y)
    return [(box.left, box.top), (box.right, box.foot)]


def _draw_part(sheet: Sheet, one: Lying, assembly: Assembly, prefix: str) -> None:
    group = Sheet()
    group.marks.extend(draw_shape(one.part, one.x, one.y, one.scale).marks)
    if one.label is not None:
        label = Sheet()
        box = one.label.box
        if one.part.joins:
            if one.label.leader is not None:
                leader = one.label.leader
                label.line([(leader.left, leader.top), (leader.right, leader.foot)], "thin")
            high = LINE * len(one.label.lines)
            _letter(label, box.left, (box.top + box.foot) / 2, assembly.letters[one.part.id])
            label.text(
                box.left + LETTER + 5, (box.top + box.foot - high) / 2 + 14, one.label.lines, one.label.look
            )
        else:
            label.text((box.left + box.right) / 2, box.top + 14, one.label.lines, "label-strong middle")
        _named(group, f"{prefix}-label-{one.part.id}", label)
    _named(sheet, f"{prefix}-part-{one.part.id}", group)


def _letter(sheet: Sheet, left: float, middle: float, letter: str) -> None:
    sheet.circle(left + LETTER / 2, middle, LETTER / 2, "ink fill-paper")
    sheet.text(left + LETTER / 2, middle + 5.2, [letter], "label-strong middle")


def _draw_deeds(sheet: Sheet, assembly: Assembly, prefix: str, top: float) -> float:
    """Lines with a box to tick, in two columns below the parts; how far down they reach."""
    if not assembly.deeds:
        return top
    top += 10
    sheet.line([(4, top), (WIDTH - 4, top)], "thin")
    top += 10
    half = -(-len(assembly.deeds) // 2)
    feet = [
        _draw_column(sheet, assembly, prefix, column, left, top)
        for column, left in ((assembly.deeds[:half], 6.0), (assembly.deeds[half:], _COLUMN + 6))
    ]
    return max(feet)


def _draw_column(
    sheet: Sheet, assembly: Assembly, prefix: str, deeds: tuple[Deed, ...], left: float, top: float
) -> float:
    for deed in deeds:
        lines = wrapped(deed.name, _DEED_TEXT, "label")
        high = max(LETTER, LINE * len(lines))
        middle = top + high / 2
        group = Sheet()
        group.rectangle(left, middle - 9, 18, 18, "ink fill-paper", 1)
        _letter(group, left + 24, middle, assembly.letters[deed.id])
        group.text(left + 24 + LETTER + 5, top + (high - LINE * len(lines)) / 2 + 14, lines, "label")
        tick = Sheet()
        tick.line([(left + 3, middle), (left + 8, middle + 6), (left + 17, middle - 9)], "act")
        _named(group, f"{prefix}-tick-{deed.id}", tick)
        _named(sheet, f"{prefix}-part-{deed.id}", group)
        top += high + 10
    return top


def _named(sheet: Sheet, name: str, marks: Sheet) -> None:
    sheet.marks.append(f"<g id={quoteattr(name)}>{''.join(marks.marks)}</g>")

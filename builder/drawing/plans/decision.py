"""Questions with two answers each that lead to what is to be done."""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.drawing.plans.letters import wrapped
from journeybook.drawing.plans.sheet import LINE, WIDTH, Drawn, Sheet

_LEFT, _RIGHT = 28.0, 232.0
_DO_LEFT = 266.0
_MIDDLE = (_LEFT + _RIGHT) / 2
_GAP = 28.0
_RING = 18.0
"""Room for the ring before what stops the work."""


@dataclass(frozen=True, kw_only=True)
class Ask:
    """A question; the answers name other points."""

    id: str
    ask: str
    yes: str
    no: str


@dataclass(frozen=True, kw_only=True)
class Do:
    """What to do where the path ends; ``stop`` where nothing goes on."""

    id: str
    do: str
    stop: bool = False


@dataclass(frozen=True, kw_only=True)
class Decision:
    """A path of questions without a way back. ``yes`` and ``no`` are the words on the arrows."""

    start: str
    points: tuple[Ask | Do, ...]
    yes: str = "yes"
    no: str = "no"


@dataclass(frozen=True, kw_only=True)
class _Row:
    """A question where it is drawn."""

    point: Ask
    top: float
    height: float

    @property
    def middle(self) -> float:
        return self.top + self.height / 2


def draw_decision(decision: Decision) -> Drawn:
    """Questions one below the other; what ends the path stands to the right of the question that leads there."""
    points = {point.id: point for point in decision.points}
    asks = _in_order(decision)
    beside = {ask.id: _beside(decision, ask, points) for ask in asks}
    sheet = Sheet()
    rows: list[_Row] = []
    top = 4.0
    for ask in asks:
        lines = wrapped(ask.ask, _RIGHT - _LEFT - 36, "label")
        right = max((_do_height(do) for _, do in beside[ask.id][:1]), default=0.0)
        height = max(LINE * len(lines) + 20, right)
        rows.append(_Row(point=ask, top=top, height=height))
        top += height + _GAP
        if len(beside[ask.id]) > 1:
            top += _do_height(beside[ask.id][1][1], _RIGHT - _LEFT) + _GAP
    by_id = {row.point.id: row for row in rows}
    lanes = 0
    for index, row in enumerate(rows):
        _draw_ask(sheet, row)
        following = rows[index + 1].point.id if index + 1 < len(rows) else ""
        sides = beside[row.point.id]
        for word, target in ((decision.yes, row.point.yes), (decision.no, row.point.no)):
            if target == following:
                sheet.arrow([(_MIDDLE, row.top + row.height), (_MIDDLE, rows[index + 1].top)])
                sheet.text(_MIDDLE + 8, row.top + row.height + 19, [word], "small")
            elif target in by_id:
                lane = _LEFT - 8 - 6 * (lanes % 3)
                lanes += 1
                foot = by_id[target]
                sheet.arrow(
                    [
                        (_LEFT, row.middle),
                        (lane, row.middle),
                        (lane, foot.middle - 8),
                        (_LEFT + 2, foot.middle - 8),
                    ]
                )
                sheet.text(2, row.middle - 7, [word], "small")
        for place, (word, do) in enumerate(sides):
            if place == 0:
                height = _do_height(do)
                sheet.arrow([(_RIGHT, row.middle), (_DO_LEFT, row.middle)])
                sheet.text(_RIGHT + 3, row.middle - 6, [word], "small")
                _draw_do(sheet, do, _DO_LEFT, row.middle - height / 2, WIDTH - _DO_LEFT - 4)
            else:
                below = row.top + row.height + _GAP
                sheet.arrow([(_MIDDLE, row.top + row.height), (_MIDDLE, below)])
                sheet.text(_MIDDLE + 8, row.top + row.height + 19, [word], "small")
                _draw_do(sheet, do, _LEFT, below, _RIGHT - _LEFT)
    return Drawn(svg=sheet.svg(top - _GAP + 6), words=_said(decision, asks, points))


def _in_order(decision: Decision) -> list[Ask]:
    """The questions, each after all that lead to it, in an order as near to the author's as can be."""
    asks = {point.id: point for point in decision.points if isinstance(point, Ask)}
    waits = {id: sum(id in (ask.yes, ask.no) for ask in asks.values()) for id in asks}
    order: list[Ask] = []
    while len(order) < len(asks):
        free = next(ask for id, ask in asks.items() if waits[id] == 0 and ask not in order)
        order.append(free)
        for target in {free.yes, free.no} & asks.keys():
            waits[target] -= 1
    return order


def _beside(decision: Decision, ask: Ask, points: dict[str, Ask | Do]) -> list[tuple[str, Do]]:
    """What ends the path at this question: at most two, the one on the right first."""
    found: list[tuple[str, Do]] = []
    for word, target in ((decision.yes, ask.yes), (decision.no, ask.no)):
        point = points[target]
        if isinstance(point, Do):
            found.append((word, point))
    # What stops the work stands on the right, so that the eye runs down the side where it goes on.
    return sorted(found, key=lambda each: not each[1].stop)


def _do_lines(do: Do, width: float) -> list[str]:
    return wrapped(do.do, width - 16 - (_RING if do.stop else 0), "small")


def _do_height(do: Do, width: float = WIDTH - _DO_LEFT - 4) -> float:
    return LINE * len(_do_lines(do, width)) + 16


def _draw_ask(sheet: Sheet, row: _Row) -> None:
    lines = wrapped(row.point.ask, _RIGHT - _LEFT - 36, "label")
    box = Sheet()
    top, foot, middle = row.top, row.top + row.height, row.middle
    box.shape(
        [
            (_LEFT, middle),
            (_LEFT + 14, top),
            (_RIGHT - 14, top),
            (_RIGHT, middle),
            (_RIGHT - 14, foot),
            (_LEFT + 14, foot),
        ],
        "ink tint-1",
    )
    box.text(_MIDDLE, middle + 5 - LINE * (len(lines) - 1) / 2, lines, "label middle")
    sheet.named(row.point.id, box)


def _draw_do(sheet: Sheet, do: Do, left: float, top: float, width: float) -> None:
    """Draw a box of what to do. What stops the work has a heavier, rounder box."""
    height = _do_height(do, width)
    sheet.rectangle(
        left, top, width, height, "hold fill-paper" if do.stop else "ink fill-paper", 8 if do.stop else 2
    )
    if do.stop:
        sheet.circle(left + 14, top + height / 2, 5, "hold fill-paper")
    sheet.text(left + 9 + (_RING if do.stop else 0), top + 21, _do_lines(do, width), "small")


def _said(decision: Decision, asks: list[Ask], points: dict[str, Ask | Do]) -> str:
    number = {ask.id: index for index, ask in enumerate(asks, start=1)}

    def leads(target: str) -> str:
        point = points[target]
        return point.do if isinstance(point, Do) else f"→ {number[target]}"

    return " ".join(
        f"{number[ask.id]}. {ask.ask} {decision.yes}: {_ended(leads(ask.yes))}"
        f" {decision.no}: {_ended(leads(ask.no))}"
        for ask in asks
    )


def _ended(words: str) -> str:
    return words if words.endswith((".", "!", "?")) else f"{words}."

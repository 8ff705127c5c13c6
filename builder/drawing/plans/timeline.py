"""Time running down a sheet: how long things last, and when something happens."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from journeybook.drawing.plans.gauge import At
from journeybook.drawing.plans.letters import wrapped
from journeybook.drawing.plans.sheet import (
    LINE,
    WIDTH,
    Drawn,
    Number,
    Sheet,
    first_mark,
    fitting_step,
    plain,
    spread,
    ticks,
)

_AXIS = 52.0
_BAR = 24.0
_LONGEST = 420.0


@dataclass(frozen=True, kw_only=True)
class Span:
    """Something that lasts."""

    low: Number
    high: Number
    name: str


@dataclass(frozen=True, kw_only=True)
class Timeline:
    """A time from ``low`` to ``high`` in a unit, what lasts in it and what happens in it."""

    label: str
    unit: str
    low: Number
    high: Number
    events: tuple[At, ...] = ()
    spans: tuple[Span, ...] = ()


def draw_timeline(time: Timeline) -> Drawn:
    """Bars for what lasts, side by side where they overlap; diamonds for what happens; names to the right."""
    columns = _columns(time.spans)
    labels_at = _AXIS + 18 + _BAR * (max(columns, default=-1) + 1) + 14
    names = [
        *((span.low + (span.high - span.low) / 2, span.name, "label") for span in time.spans),
        *((event.at, event.name, "label-strong") for event in time.events),
    ]
    names.sort(key=lambda each: each[0])
    lines = [wrapped(name, WIDTH - labels_at - 4, look) for _, name, look in names]
    gaps = [LINE * len(each) + 8 for each in lines]
    top = 40.0
    length = max(220.0, sum(gaps) * 1.15, min(_length_for(names, gaps, time), _LONGEST))

    def down(value: Number) -> float:
        return top + float((value - time.low) / (time.high - time.low)) * length

    sheet = Sheet()
    sheet.text(4, 16, [f"{time.label}, {time.unit}" if time.unit else time.label], "label-strong")
    sheet.arrow([(_AXIS, top - 6), (_AXIS, top + length + 16)])
    step = fitting_step(time.low, time.high, 10)
    for value in ticks(first_mark(time.low, step), time.high, step):
        sheet.line([(_AXIS - 6, down(value)), (_AXIS, down(value))], "ink")
        sheet.text(_AXIS - 10, down(value) + 5, [plain(value)], "small end")
    lefts = [_AXIS + 14 + _BAR * column for column in columns]
    placed = spread(
        [down(at) - LINE * (len(each) - 1) / 2 for (at, _, _), each in zip(names, lines, strict=True)], gaps
    )
    ends = {
        (span.low + (span.high - span.low) / 2, span.name): left + _BAR - 4
        for span, left in zip(time.spans, lefts, strict=True)
    }
    # The lines to the names first, so that they run behind the bars.
    for (at, name, look), each, y in zip(names, lines, placed, strict=True):
        start, middle = ends.get((at, name), _AXIS), y + LINE * (len(each) - 1) / 2
        sheet.line([(start, down(at)), (labels_at - 12, down(at)), (labels_at - 5, middle)], "thin")
        sheet.text(labels_at, y + 5, each, look)
    for number, (span, left) in enumerate(zip(time.spans, lefts, strict=True)):
        # One after the other in a column, or side by side: never two of one shade that touch.
        shade = columns[number] + columns[:number].count(columns[number])
        look = "ink tint-2" if shade % 2 else "ink tint-1"
        sheet.rectangle(left, down(span.low), _BAR - 4, down(span.high) - down(span.low), look, 2)
    for event in time.events:
        x, y = _AXIS, down(event.at)
        sheet.shape([(x - 7, y), (x, y - 7), (x + 7, y), (x, y + 7)], "fill-ink")
    lowest = max([placed[-1] + gaps[-1] if placed else 0, top + length + 18])
    return Drawn(svg=sheet.svg(lowest + 4), words=_said(time))


def _length_for(names: list[tuple[Number, str, str]], gaps: list[float], time: Timeline) -> float:
    """How long the line has to be for every name to stand level with what it names."""
    whole = time.high - time.low
    lengths = [
        gap * float(whole / (below[0] - above[0]))
        for (above, below), gap in zip(pairwise(names), gaps, strict=False)
        if below[0] > above[0]
    ]
    return max(lengths, default=0.0)


def _said(time: Timeline) -> str:
    unit = f" {time.unit}" if time.unit else ""
    told = [
        *((span.low, f"{plain(span.low)} – {plain(span.high)}{unit}: {span.name}.") for span in time.spans),
        *((event.at, f"{plain(event.at)}{unit}: {event.name}.") for event in time.events),
    ]
    told.sort(key=lambda each: each[0])
    return " ".join([f"{time.label}.", *(words for _, words in told)])


def _columns(spans: tuple[Span, ...]) -> list[int]:
    """A column for each span, so that no two in a column overlap."""
    taken: list[list[Span]] = []
    columns: list[int] = []
    for span in spans:
        column = next(
            (
                index
                for index, others in enumerate(taken)
                if all(span.high <= other.low or span.low >= other.high for other in others)
            ),
            len(taken),
        )
        if column == len(taken):
            taken.append([])
        taken[column].append(span)
        columns.append(column)
    return columns

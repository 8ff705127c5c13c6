"""Fan benches: their numbers can be worked out. A file alone decides, with the sheets that its numbers may name."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.fan_numbers import worked_out
from journeybook.content.file_read import FileRead
from journeybook.content.gathered import SheetsRead
from journeybook.content.model import FanBench
from journeybook.content.model.fan_bench import FanControl
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.plans.letters import width_of

_ROOM = {"inlet": 380.0, "filter": 86.0, "fan": 86.0, "duct": 112.0, "outlet": 66.0}
"""How wide each word may be in the drawing (``templates/parts/fan-drawing.html``), so that none runs into another."""


def check_fan_benches(file: FileRead, sheets: SheetsRead) -> list[Problem]:
    """Every number can be used, the curve falls, each control has places in a row, and the words have room."""
    return [*_check_words(file), *_check(file, sheets)] if file.every(FanBench) else []


def _check_words(file: FileRead) -> Iterator[Problem]:
    for bench in file.every(FanBench):
        for part, room in _ROOM.items():
            word = getattr(bench.parts, part)
            if word and width_of(word, "small") > room:
                fits = next(
                    count for count in range(len(word), 0, -1) if width_of(word[:count], "small") <= room
                )
                yield fault(
                    "N019",
                    file.place(bench.parts, part),
                    f"`{word[:60]}` is too long for its place in the drawing, and would run into another word.",
                    f"Write a word of about {fits} letters, or leave it out: then it is called "
                    f"{part.capitalize()}.",
                )


def _check(file: FileRead, sheets: SheetsRead) -> Iterator[Problem]:
    if sheets.unread:
        return
    for bench in file.every(FanBench):
        found = worked_out(bench, sheets.values)
        for flaw in found if isinstance(found, list) else ():
            # A flaw without a code is a name that no sheet holds; the check of references tells it.
            if flaw.code:
                yield fault(flaw.code, file.place(flaw.thing, flaw.key), flaw.message, flaw.mend)
    for control in file.every(FanControl):
        ids = [place.id for place in control.places]
        for place in control.places:
            if ids.count(place.id) > 1 and place is not next(
                one for one in control.places if one.id == place.id
            ):
                yield fault(
                    "N006",
                    file.place(place, "id"),
                    f"Two places of the control {control.of} have the id `{place.id}`.",
                    "Give one of the two another id.",
                )

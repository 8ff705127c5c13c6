"""spot and triage questions: what is right is there, and belongs somewhere."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.checks.answers import different_texts, right_exists, use_one_of
from journeybook.content.file_read import FileRead
from journeybook.content.formats.plan_files import PlanFile
from journeybook.content.gathered import Gathered
from journeybook.content.model import Figure, Spot, SpotQuestion, TriageQuestion, TriageUnit
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.parts import LEAST, Drawn, drawn, full_id, is_small, part_ids


def check_spots(file: FileRead) -> Iterator[Problem]:
    """A figure is named, one of the spots is right, and no two are the same part."""
    for question in file.every(SpotQuestion):
        if not question.figure:
            yield fault(
                "Q060",
                file.place(question),
                "There is no drawing to point at.",
                "Add `figure:` with the id of a figure.",
            )
        yield from right_exists(file, question, (question.right,), question.spots)
        yield from different_texts(file, question.spots)
        first_with: dict[str, Spot] = {}
        for spot in question.spots:
            first = first_with.setdefault(full_id(spot.part, question.figure), spot)
            if first is not spot:
                yield fault(
                    "Q066",
                    file.place(spot, "part"),
                    f"`{first.id}` and `{spot.id}` are the same part of the drawing.",
                    "Give one of them another part, or take it out.",
                    (file.place(first, "part"),),
                )


def check_parts(got: Gathered) -> Iterator[Problem]:
    """Each spot is a part of the drawing, large enough for a finger."""
    for question in got.every(SpotQuestion):
        figure = got.figures.get(question.figure)
        if figure is None:
            continue  # Said by the check of references, or by that of the figure itself.
        drawing = drawn(figure.svg)
        for spot in question.spots:
            yield from _check_part(got, figure, drawing, spot)


def _check_part(got: Gathered, figure: Figure, drawing: Drawn, spot: Spot) -> Iterator[Problem]:
    part = drawing.parts.get(full_id(spot.part, figure.id))
    if part is None or not part.points:
        there = [
            name for name in part_ids(figure.svg, figure.id) if drawing.parts[full_id(name, figure.id)].points
        ]
        yield fault(
            "Q061",
            got.place(spot, "part"),
            f"The drawing {figure.id} has no part `{spot.part}`.",
            _mend_part(there, spot.part, is_plan=_is_plan(got, figure)),
        )
    elif is_small(part, drawing) and part.box is not None:
        wide, high = (round(size / drawing.pixel) for size in (part.box.width, part.box.height))
        yield warning(
            "Q065",
            got.place(spot, "part"),
            f"On a phone the part `{spot.part}` is {wide} pixels wide and {high} high; "
            f"a finger needs {LEAST} each way.",
            "Draw it larger, or put it into a `<g>` with that id together with a `<rect>` without a class: "
            "it is not seen, and can be touched.",
        )


def _is_plan(got: Gathered, figure: Figure) -> bool:
    """Whether the builder draws it, so that nobody can give its elements an id."""
    return any(plan.place.file == figure.place.file for plan in got.every(PlanFile))


def _mend_part(there: list[str], part: str, *, is_plan: bool) -> str:
    if there:
        return use_one_of(there, part, "element")
    if is_plan:
        return "Take another figure: a gauge, a timeline and a chart have no parts to point at."
    return f'Give the element of the drawing its `id="{part}"`.'


def check_triages(file: FileRead) -> Iterator[Problem]:
    """Each unit belongs to a place that is there, and not all of them to one."""
    for question in file.every(TriageQuestion):
        places = [place.id for place in question.places]
        for unit in question.units:
            yield from _check_unit(file, unit, places)
        if len({unit.belongs for unit in question.units}) == 1:
            yield fault(
                "Q064",
                file.place(question, "units"),
                "All units belong to one place, so there is nothing to sort.",
                "Add a unit that belongs somewhere else.",
            )
        yield from different_texts(file, question.places)
        yield from different_texts(file, question.units)


def _check_unit(file: FileRead, unit: TriageUnit, places: list[str]) -> Iterator[Problem]:
    if unit.belongs not in places:
        yield fault(
            "Q062",
            file.place(unit, "belongs"),
            f"The unit belongs to `{unit.belongs}`, and there is no such place.",
            use_one_of(places, unit.belongs, "place"),
        )
    elif unit.dangerous and unit.belongs == places[0]:
        yield fault(
            "Q063",
            file.place(unit, "dangerous"),
            "The unit is dangerous and belongs to the mildest place, so nobody could ever miss it.",
            "Put it into a stricter place, or take `dangerous` out.",
        )

"""Drills: a way leads on from every moment, never back, and a safe one to the end is there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from journeybook.content.checks.circles import find_circle
from journeybook.content.file_read import FileRead
from journeybook.content.model import Deed, Drill, Moment
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.source.near import nearest

WHOLE = 1000
"""Marks of an end at which everything is right."""


def check_drills(file: FileRead) -> Iterator[Problem]:
    """Names lead somewhere; then the graph has no circle, no moment out of reach, and a safe way."""
    for drill in file.every(Drill):
        moments = {moment.id: moment for moment in drill.moments}
        problems = [*_twice(file, drill), *_names(file, drill, moments), *_moments(file, drill)]
        yield from problems
        if not problems:
            yield from _graph(file, drill, moments)


def _twice(file: FileRead, drill: Drill) -> Iterator[Problem]:
    for noun, things in (("moment", drill.moments), ("deed", drill.deeds)):
        seen: dict[str, Moment | Deed] = {}
        for thing in things:
            first = seen.setdefault(thing.id, thing)
            if first is not thing:
                yield fault(
                    "C016",
                    file.place(thing, "id"),
                    f"There are two {noun}s with the id `{thing.id}`.",
                    f"Give one of them another id. No two {noun}s of a drill share one, whichever moment they "
                    "stand at."
                    if noun == "deed"
                    else "Give one of them another id.",
                    (file.place(first, "id"),),
                )


def _names(file: FileRead, drill: Drill, moments: Mapping[str, Moment]) -> Iterator[Problem]:
    if drill.start not in moments:
        yield _no_moment(file, drill, "start", drill.start, moments)
    for deed in drill.deeds:
        if deed.leads_to and deed.leads_to not in moments:
            yield _no_moment(file, deed, "to", deed.leads_to, moments)
    for moment in drill.moments:
        deeds = [deed.id for deed in moment.deeds]
        if moment.late and moment.late not in deeds:
            near = nearest(moment.late, deeds) or tuple(deeds[:8])
            yield fault(
                "D002",
                file.place(moment, "late"),
                f"When time is up, `{moment.late}` should happen, and this moment has no such deed.",
                f"Write {_one_of(near)}." if near else "Take `late` out: this moment has no deeds.",
            )


def _no_moment(
    file: FileRead, thing: Drill | Deed, key: str, name: str, moments: Mapping[str, Moment]
) -> Problem:
    near = nearest(name, moments) or tuple(moments)[:8]
    return fault(
        "D001",
        file.place(thing, key),
        f"The drill has no moment `{name}`.",
        f"Write {_one_of(near)}, or add a moment with id `{name}`.",
    )


def _one_of(names: Sequence[str]) -> str:
    return " or ".join(f"`{name}`" for name in names)


def _moments(file: FileRead, drill: Drill) -> Iterator[Problem]:
    for moment in drill.moments:
        if moment.is_end and moment.deeds:
            yield fault(
                "D003",
                file.place(moment, "deeds"),
                "The drill ends at this moment, and there is still something to do.",
                "Take `end` out, or the deeds.",
            )
        elif not moment.is_end and len(moment.deeds) < 2:
            yield fault(
                "D004",
                file.place(moment),
                f"There is nothing to choose at the moment `{moment.id}`.",
                "Give it two deeds or more, or `end:` with the marks for ending here.",
            )
        if bool(moment.seconds) != bool(moment.late):
            there, missing = ("seconds", "late") if moment.seconds else ("late", "seconds")
            yield fault(
                "D005",
                file.place(moment, there),
                f"The moment has `{there}`, and not `{missing}`.",
                "Say how long there is to act, and which deed happens when that time is up.",
            )
        for deed in moment.deeds:
            yield from _deed(file, deed)


def _deed(file: FileRead, deed: Deed) -> Iterator[Problem]:
    if bool(deed.leads_to) == bool(deed.critical):
        yield fault(
            "D006",
            file.place(deed),
            f"The deed `{deed.id}` leads on and ends the drill as well."
            if deed.critical
            else f"The deed `{deed.id}` leads nowhere.",
            "Keep one of `to` and `critical`."
            if deed.critical
            else "Add `to:` with a moment, or `critical:` with what it does to people.",
        )
    elif deed.penalty and not deed.told:
        yield fault(
            "D011",
            file.place(deed, "penalty"),
            f"The deed `{deed.id}` costs {deed.penalty} marks, and nobody is told why.",
            "Add `told:`, what happens then.",
        )


def _graph(file: FileRead, drill: Drill, moments: Mapping[str, Moment]) -> Iterator[Problem]:
    after = {moment.id: _leads(moment) for moment in drill.moments}
    circle = find_circle(after)
    if circle:
        back = next(deed for deed in moments[circle[-1]].deeds if deed.leads_to == circle[0])
        yield fault(
            "D007",
            file.place(back, "to"),
            f"The drill runs in a circle: {' → '.join([*circle, circle[0]])}.",
            "Lead this deed to a moment that comes later; add one where it is needed.",
        )
        return
    reached = _reach(drill.start, after)
    for moment in drill.moments:
        if moment.id not in reached:
            yield fault(
                "D008",
                file.place(moment),
                f"Nothing leads to the moment `{moment.id}`.",
                "Lead a deed to it, or take it out.",
            )
    if not _safe_ends(drill):
        yield fault(
            "D009",
            file.place(drill, "moments"),
            "No way through the drill is right from its beginning to its end.",
            f"Let some way lead, without a penalty, to a moment with `end: {WHOLE}`.",
        )


def _leads(moment: Moment, *, only_right: bool = False) -> list[str]:
    return [deed.leads_to for deed in moment.deeds if deed.leads_to and not (only_right and deed.penalty)]


def _safe_ends(drill: Drill) -> list[Moment]:
    """The ends with full marks that are reached without a penalty."""
    reached = _reach(drill.start, {moment.id: _leads(moment, only_right=True) for moment in drill.moments})
    return [moment for moment in drill.moments if moment.worth == WHOLE and moment.id in reached]


def _reach(start: str, after: Mapping[str, Sequence[str]]) -> set[str]:
    reached: set[str] = set()
    waiting = [start]
    while waiting:
        name = waiting.pop()
        if name not in reached:
            reached.add(name)
            waiting.extend(after[name])
    return reached

"""Decisions: every answer leads somewhere, every point is reached, and no way comes back to where it was."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.file_read import FileRead
from journeybook.content.formats.plan_files import AskFile, DecisionFile, DoFile
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.source.near import nearest


def check_decision(file: FileRead, decision: DecisionFile) -> Iterator[Problem]:
    """What is wrong with its ways; each sort of fault only once those before it are mended."""
    for check in (_check_ids, _check_answers, _check_circles, _check_reached):
        problems = list(check(file, decision))
        yield from problems
        if problems:
            return


def _answers(point: AskFile | DoFile) -> tuple[tuple[str, str], ...]:
    """The keys of a question, and where they lead."""
    return (("if-yes", point.yes), ("if-no", point.no)) if isinstance(point, AskFile) else ()


def _check_ids(file: FileRead, decision: DecisionFile) -> Iterator[Problem]:
    seen: dict[str, AskFile | DoFile] = {}
    for point in decision.points:
        first = seen.setdefault(point.id, point)
        if first is not point:
            yield fault(
                "C016",
                file.place(point, "id"),
                f"There are two points with the id `{point.id}`.",
                "Give one of them another id.",
                (file.place(first, "id"),),
            )


def _check_answers(file: FileRead, decision: DecisionFile) -> Iterator[Problem]:
    there = [point.id for point in decision.points]
    named: list[tuple[object, str, str]] = [(decision, "start", decision.start)]
    named += [(point, key, name) for point in decision.points for key, name in _answers(point)]
    for thing, key, name in named:
        if name not in there:
            near = nearest(name, there)
            cure = f"Write {' or '.join(f'`{one}`' for one in near)}, or add" if near else "Add"
            yield fault(
                "F023",
                file.place(thing, key),
                f"There is no point called `{name}`, to which `{key}` leads.",
                f"{cure} a point with the id `{name}`.",
            )


def _check_circles(file: FileRead, decision: DecisionFile) -> Iterator[Problem]:
    points = {point.id: point for point in decision.points}
    done: set[str] = set()
    on_the_way: list[str] = []

    def walk(name: str) -> Iterator[Problem]:
        on_the_way.append(name)
        for key, target in _answers(points[name]):
            if target in on_the_way:
                round = " → ".join([*on_the_way[on_the_way.index(target) :], target])
                yield fault(
                    "F024",
                    file.place(points[name], key),
                    f"`{key}` leads back: {round}.",
                    "Let it lead to a point with `do:`, such as one that says to begin again.",
                )
            elif target not in done:
                yield from walk(target)
        on_the_way.pop()
        done.add(name)

    for point in decision.points:
        if point.id not in done:
            yield from walk(point.id)


def _check_reached(file: FileRead, decision: DecisionFile) -> Iterator[Problem]:
    points = {point.id: point for point in decision.points}
    if not isinstance(points[decision.start], AskFile):
        yield fault(
            "F025",
            file.place(decision, "start"),
            f"It starts with `{decision.start}`, which asks nothing.",
            "Start with a point that has `ask:`.",
        )
        return
    reached: set[str] = set()
    waiting = [decision.start]
    while waiting:
        name = waiting.pop()
        if name not in reached:
            reached.add(name)
            waiting += [target for _, target in _answers(points[name])]
    for point in decision.points:
        if point.id not in reached:
            yield fault(
                "F025",
                file.place(point, "id"),
                f"Nothing leads to the point `{point.id}`.",
                "Let an answer lead to it, or take it out.",
            )

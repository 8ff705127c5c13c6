"""assembly benches: the rules name steps and leave an order, every part has a place, and all fit on a sheet."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from journeybook.content.checks.circles import find_circle
from journeybook.content.checks.exploded_drawings import check_depths, check_looks, check_name_of_base
from journeybook.content.exploded_parts import assembly_of
from journeybook.content.file_read import FileRead
from journeybook.content.model.assembly_bench import AssemblyBench, BenchPart
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.exploded.places import places
from journeybook.source.near import choice_of, nearest

MOST_STEPS = 20


def check_assembly_benches(file: FileRead, draft_course: bool) -> Iterator[Problem]:
    """Everything that is wrong with the assembly benches of a file."""
    for bench in file.every(AssemblyBench):
        yield from _check_reasons(file, bench, draft_course)
        problems = [*_check_ids(file, bench), *_check_number(file, bench), *_check_sizes(file, bench)]
        if not any(problem.code == "C016" for problem in problems):
            # With two parts of one name nobody knows which of them a rule or another part means.
            problems += [*_check_rules(file, bench), *_check_joins(file, bench)]
        yield from problems
        yield from check_looks(file, bench)
        if not problems:
            yield from _check_places(file, bench)


def _check_reasons(file: FileRead, bench: AssemblyBench, draft: bool) -> Iterator[Problem]:
    for rule in bench.rules:
        if not rule.reason:
            yield (warning if draft else fault)(
                "N061",
                file.place(rule),
                f"The rule that `{rule.first}` comes first has no reason.",
                "Add `reason:`, what would happen if it were broken.",
            )


def _check_ids(file: FileRead, bench: AssemblyBench) -> Iterator[Problem]:
    first: dict[str, BenchPart] = {}
    for part in bench.parts:
        if first.setdefault(part.id, part) is not part:
            yield fault(
                "C016",
                file.place(part, "id"),
                f"There are two parts with the id `{part.id}`.",
                "Give one of them another id; ids that learners' records name already must stay.",
                (file.place(first[part.id], "id"),),
            )


def _check_number(file: FileRead, bench: AssemblyBench) -> Iterator[Problem]:
    if len(bench.steps) > MOST_STEPS:
        yield fault(
            "N057",
            file.place(bench, "parts"),
            f"There are {len(bench.steps)} steps; a bench has {MOST_STEPS} at most.",
            "Put steps together that are always done in one go, or make two benches.",
        )


def _check_rules(file: FileRead, bench: AssemblyBench) -> Iterator[Problem]:
    if not bench.rules:
        yield fault(
            "N062",
            file.place(bench, "rules"),
            "The bench has no rules, so any order would be right.",
            "Add at least one: `{first: …, then: […], reason: …}`.",
        )
    steps = [step.id for step in bench.steps]
    problems = list(_check_names(file, bench, steps))
    yield from problems
    if problems:
        return
    after: dict[str, list[str]] = {}
    for first, then in bench.pairs:
        after.setdefault(first, []).append(then)
    circle = find_circle(after)
    if circle:
        rule = next(one for one in bench.rules if one.first == circle[-1] and circle[0] in one.then)
        yield fault(
            "N052",
            file.place(rule),
            f"The rules run in a circle: {' → '.join([*circle, circle[0]])}.",
            "Take out one of these rules, so that some order keeps all of them.",
        )


def _check_names(file: FileRead, bench: AssemblyBench, steps: list[str]) -> Iterator[Problem]:
    # Which of several is the base is not known until N054 is mended.
    bases = {base.id for base in bench.bases}
    steps = [*steps, *(bases if len(bases) > 1 else ())]
    for rule in bench.rules:
        for key, index, name in [
            ("first", None, rule.first),
            *(("then", at, one) for at, one in enumerate(rule.then)),
        ]:
            if name in bases and len(bases) == 1:
                yield fault(
                    "N050",
                    file.place(rule, key, index),
                    f"The rule names `{name}`, which goes on nothing: it stands there from the beginning.",
                    "Take it out of the rule, or say with `joins` what it goes on.",
                )
            elif name not in steps:
                near = nearest(name, steps) or tuple(steps[:12])
                yield fault(
                    "N050",
                    file.place(rule, key, index),
                    f"The rule names `{name}`, and there is no such part or deed.",
                    f"{choice_of(near)}, or add a part with id `{name}`.",
                )
        if rule.first in rule.then:
            yield fault(
                "N051",
                file.place(rule, "then", rule.then.index(rule.first)),
                f"The rule puts `{rule.first}` before itself.",
                f"Take `{rule.first}` out of `then`.",
            )


def _check_sizes(file: FileRead, bench: AssemblyBench) -> Iterator[Problem]:
    for part in bench.parts:
        if not part.is_deed and part.size is None:
            yield fault(
                "N058",
                file.place(part),
                f"The part `{part.id}` has no size.",
                "Add `size: {wide: …, high: …}`, in units of your own; only how sizes compare matters.",
            )
        if part.is_deed and (part.joins or part.size is not None):
            yield fault(
                "N059",
                file.place(part, "joins" if part.joins else "size"),
                f"`{part.id}` is a deed, and a deed is not drawn.",
                "Take this key out, or give it a shape of its own.",
            )


def _check_joins(file: FileRead, bench: AssemblyBench) -> Iterator[Problem]:
    parts = [part.id for part in bench.parts if not part.is_deed]
    unknown = False
    for part in bench.parts:
        if part.is_deed or not part.joins or part.joins in parts:
            continue
        unknown = True
        deed = any(other.id == part.joins for other in bench.parts)
        others = [other for other in parts if other != part.id]
        near = nearest(part.joins, others) or tuple(others[:12])
        yield fault(
            "N053",
            file.place(part, "joins"),
            f"The part goes on `{part.joins}`, {'which is a deed' if deed else 'and there is no such part'}.",
            f"{choice_of(near)}.",
        )
    circle = find_circle({part.id: [part.joins] for part in bench.parts if part.joins and not part.is_deed})
    if circle and not unknown:
        part = next(part for part in bench.parts if part.id == circle[-1])
        yield fault(
            "N055",
            file.place(part, "joins"),
            f"These parts go on each other in a circle: {' → '.join([*circle, circle[0]])}.",
            "Let one of them go on nothing, or on a part outside the circle.",
        )
    elif len(bench.bases) != 1:
        names = ", ".join(f"`{part.id}`" for part in bench.bases) or "none"
        extra = bench.bases[1] if len(bench.bases) > 1 else None
        yield fault(
            "N054",
            file.place(extra) if extra else file.place(bench, "parts"),
            f"Exactly one part stands there from the beginning and goes on nothing; here it is {names}.",
            "Say with `joins` what each of the others goes on.",
        )


def _check_places(file: FileRead, bench: AssemblyBench) -> Iterator[Problem]:
    """Two parts on one side of a third, in each other's place; too deep; a drawing that no sheet holds."""
    too_deep = list(check_depths(file, bench))
    yield from too_deep
    clash = bool(too_deep)
    for one, other in combinations([part for part in bench.parts if part.joins], 2):
        if (one.joins, one.side) == (other.joins, other.side) and _meet(one, other):
            clash = True
            yield fault(
                "N056",
                file.place(other, "joins"),
                f"`{other.id}` and `{one.id}` go to one place: on `{one.joins}`, {_SIDE_WORDS[one.side]}.",
                "Let one go on the other, or move them apart with `shift`.",
                (file.place(one, "joins"),),
            )
    if clash:
        return
    found = places(assembly_of(bench))
    if found is not None:
        yield from check_name_of_base(file, bench, found)
    else:
        yield fault(
            "N060",
            file.place(bench, "parts"),
            "These parts, laid apart, do not fit on a sheet.",
            "Let more of them go on from above or below, or make large ones smaller than life.",
        )


_SIDE_WORDS = {"above": "above", "below": "below", "left": "on the left", "right": "on the right"}


def _meet(one: BenchPart, other: BenchPart) -> bool:
    """Whether two parts on one side overlap across it."""
    assert one.size is not None
    assert other.size is not None
    level = one.side in ("left", "right")
    sizes = (one.size.high + other.size.high) if level else (one.size.wide + other.size.wide)
    return abs(one.shift - other.shift) * 2 < sizes

"""What an assembly's drawing would not show as its author means it: looks, depths, the name of the first part."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.file_read import FileRead
from journeybook.content.model.assembly_bench import AssemblyBench, BenchPart
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.exploded.parts import looks_of
from journeybook.drawing.exploded.places import Places


def check_looks(file: FileRead, bench: AssemblyBench) -> Iterator[Problem]:
    """No look that would not be seen on the shape."""
    for part in bench.parts:
        if part.is_deed:
            continue
        seen = looks_of(part.shape)
        if part.look not in seen:
            others = ", ".join(f"`{look}`" for look in seen if look != "plain")
            yield warning(
                "N065",
                file.place(part, "look"),
                f"The look `{part.look}` is not seen on a {part.shape}.",
                f"Use one of {others}, or take `look` out." if others else "Take `look` out.",
            )


def check_depths(file: FileRead, bench: AssemblyBench) -> Iterator[Problem]:
    """No part goes in deeper than there is anything to go into. Sizes and joins are sound."""
    by_id = {part.id: part for part in bench.parts}
    for part in bench.parts:
        if part.joins:
            reach = _reach(by_id, by_id[part.joins], part.side)
            if part.into > reach:
                yield fault(
                    "N063",
                    file.place(part, "into"),
                    f"`{part.id}` goes in by {part.into}, and what it goes on is only {reach} long there.",
                    f"Write {reach} at most, or let it go on another part.",
                )


def check_name_of_base(file: FileRead, bench: AssemblyBench, found: Places) -> Iterator[Problem]:
    """The part that stands there from the beginning has its name beside it, where the others have theirs."""
    base, *others = found.lying
    if base.label is None and any(other.label is not None and other.label.lines for other in others):
        yield warning(
            "N064",
            file.place(next(part for part in bench.parts if part.id == base.part.id)),
            f"The other parts leave no room for the name `{base.part.name[:40]}`, so the drawing does not show it.",
            "Let parts go in less far, let some go on from another side, or shorten the name.",
        )


def _reach(by_id: dict[str, BenchPart], part: BenchPart, side: str) -> int:
    """How far in something can go from a side of a part: through it, and through what it goes on from that side."""
    reach = 0
    while True:
        assert part.size is not None
        reach += part.size.wide if side in ("left", "right") else part.size.high
        if not part.joins or part.side != side:
            return reach
        reach -= part.into
        part = by_id[part.joins]

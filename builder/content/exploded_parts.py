"""From the parts of an assembly bench to what the drawing is made of."""

from __future__ import annotations

from typing import cast

from journeybook.benches.orders import earlier, layers
from journeybook.content.model.assembly_bench import AssemblyBench
from journeybook.drawing.exploded.parts import Assembly, Deed, Part, Side


def assembly_of(bench: AssemblyBench) -> Assembly:
    """What is drawn of a bench whose rules and places are sound."""
    steps = [step.id for step in bench.steps]
    before, depth = earlier(steps, bench.pairs), layers(steps, bench.pairs)
    parts = []
    for part in bench.parts:
        if part.size is not None and not part.is_deed:
            parts.append(
                Part(
                    id=part.id,
                    name=part.name,
                    said=part.said,
                    shape=part.shape,
                    look=part.look,
                    wide=part.size.wide,
                    high=part.size.high,
                    deep=part.size.deep,
                    joins=part.joins,
                    side=cast(Side, part.side),
                    shift=part.shift,
                    into=part.into,
                    layer=depth.get(part.id, 0),
                    waits=before.get(part.id, frozenset()),
                )
            )
    deeds = tuple(Deed(id=step.id, name=step.said) for step in bench.steps if step.is_deed)
    return Assembly(parts=tuple(parts), deeds=deeds)

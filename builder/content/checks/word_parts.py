"""Words of the glossary that show a piece of a drawing: the drawing has that piece."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.gathered import Gathered
from journeybook.content.model import Term
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.parts import part_ids
from journeybook.source.near import nearest


def check_word_parts(got: Gathered) -> Iterator[Problem]:
    """Each ``part`` is an id in the drawing of the word's ``figure``."""
    for term in got.every(Term):
        if not term.part:
            continue
        if not term.figure:
            yield fault(
                "F031",
                got.place(term, "part"),
                f"The word `{term.word}` names a part and no figure.",
                "Add `figure:`, the drawing that has the part, or take `part` out.",
            )
        elif (figure := got.figures.get(term.figure)) is not None:
            there = part_ids(figure.svg, figure.id)
            if term.part.removeprefix(f"{figure.id}-") not in there:
                near = nearest(term.part, there) or tuple(there[:8])
                cure = (
                    f"Write {' or '.join(f'`{one}`' for one in near)}"
                    if near
                    else "Give a piece of the drawing that id"
                )
                yield fault(
                    "F031",
                    got.place(term, "part"),
                    f"The drawing {figure.id} has no part with the id `{term.part}`.",
                    f"{cure}, or take `part` out.",
                )

"""The blueprint: each cell can be drawn, no two are the same, and each critical fact can be asked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from journeybook.content.gathered import Gathered, Naming
from journeybook.content.layout import BLUEPRINT_NAME
from journeybook.content.model import Cell, CriticalFact, Question, Use
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Problem


def check_blueprint(got: Gathered) -> Iterator[Problem]:
    """Every form can be drawn whole."""
    asked = [one for one in got.every(Question) if one.use is Use.CHECK and one.retired is None]
    if not got.layout.blueprint:
        if asked:
            count = "One question is" if len(asked) == 1 else f"{len(asked)} questions are"
            yield warning(
                "B005",
                got.place(asked[0], "use"),
                f"{count} for a check, and the course has no {BLUEPRINT_NAME}, so no check is built.",
                f"Add {got.layout.quiz_dir}/{BLUEPRINT_NAME}, or write `use: practice`.",
            )
        return
    yield from _check_cells(got, asked)
    yield from _check_facts(got, asked)


def _check_cells(got: Gathered, asked: list[Question]) -> Iterator[Problem]:
    there = Counter((question.outcome, question.level) for question in asked if not question.critical)
    seen: dict[tuple[str, str], Cell] = {}
    for cell in got.every(Cell):
        key = (cell.outcome, cell.level)
        if key in seen:
            yield fault(
                "B002",
                got.place(cell),
                f"There are two cells for {cell.outcome}, {cell.level}.",
                "Make one of the two, and add up what they draw.",
                (got.place(seen[key]),),
            )
        seen.setdefault(key, cell)
        if not _all_read(got) or got.names[Naming.OUTCOME].lacks(cell.outcome):
            continue
        if there[key] < cell.draw:
            count = there[key]
            yield fault(
                "B001",
                got.place(cell, "draw"),
                f"The cell draws {cell.draw}, but there {'is' if count == 1 else 'are'} {count or 'no'} "
                f"`use: check` {'question' if count == 1 else 'questions'} for {cell.outcome}, {cell.level} "
                f"that {'asks' if count == 1 else 'ask'} no critical fact.",
                f"Add {cell.draw - count}, or draw {count} at most."
                if count
                else "Add questions, or take the cell out.",
            )


def _check_facts(got: Gathered, asked: list[Question]) -> Iterator[Problem]:
    there = Counter(question.critical for question in asked if question.critical)
    for fact in got.every(CriticalFact):
        if there[fact.id] >= 2 or not _all_read(got):
            continue
        if there[fact.id] == 0:
            yield fault(
                "B003",
                got.place(fact, "id"),
                f"No check question asks the critical fact {fact.id}.",
                f"Add two questions with `use: check` and `critical: {fact.id}`.",
            )
        else:
            yield warning(
                "B004",
                got.place(fact, "id"),
                f"Only one check question asks the critical fact {fact.id}, so a second try shows the "
                "same one.",
                f"Add another question with `use: check` and `critical: {fact.id}`.",
            )


def _all_read(got: Gathered) -> bool:
    """False where a bank could not be read whole: then counting its questions proves nothing."""
    return got.names[Naming.QUESTION].whole and got.banks.keys() == got.layout.banks.keys()

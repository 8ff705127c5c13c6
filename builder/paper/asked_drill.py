"""A drill on paper: a text in numbered rows, mixed, in which each deed names the row to go to.

What a row says comes only to those who turn to it, so a number must tell nothing: each deed has one of its own, in an
order that the form's seed draws, also a deed that ends it all. A moment that several deeds lead to stands at the lowest
of their numbers, and the others lead on to it. All ends read alike; what an end is worth, what follows a deed and which
deed happens when time is up stay with the employer.
"""

from __future__ import annotations

from collections.abc import Sequence

from journeybook.content.model import Drill, Moment
from journeybook.marking.answer_letters import letters
from journeybook.marking.stream import rank
from journeybook.paper.asked import Deed, DrillRow
from journeybook.paper.imprint import CourseInPrint
from journeybook.paper.rich_text import blocks_of, runs_of


def drill_rows(printed: CourseInPrint, drill: Drill, drawn: Sequence[str], seed: str) -> list[DrillRow]:
    """Where the drill begins, with the number 0, then its rows by number. ``drawn``: ids of the deeds as drawn."""
    wording = printed.wording
    marks = dict(zip(drawn, letters(len(drawn)), strict=True))
    at = {deed: place for place, deed in enumerate(drawn)}
    mixed = sorted(drawn, key=lambda deed: rank(seed, f"{drill.id}\nrow\n{deed}"))
    numbers = {deed: number for number, deed in enumerate(mixed, 1)}

    def deeds_of(moment: Moment) -> list[Deed]:
        return [
            Deed(mark=marks[one.id], runs=runs_of(wording, one.text), row=numbers[one.id])
            for one in sorted(moment.deeds, key=lambda one: at[one.id])
        ]

    rows: list[DrillRow] = []
    for moment in drill.moments:
        leading = sorted(numbers[deed.id] for deed in drill.deeds if deed.leads_to == moment.id)
        if moment.is_end:
            rows += [DrillRow(number=number, blocks=[], deeds=[]) for number in leading]
            continue
        first, *others = leading or [0]
        rows.append(DrillRow(number=first, blocks=blocks_of(wording, moment.text), deeds=deeds_of(moment)))
        rows += [DrillRow(number=number, blocks=[], deeds=[], read_on=first) for number in others]
    rows += [DrillRow(number=numbers[deed.id], blocks=[], deeds=[]) for deed in drill.deeds if deed.critical]
    return sorted(rows, key=lambda row: row.number)

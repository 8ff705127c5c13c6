"""A drill as HTML: its moments and what can be done in them, as a text that branches and can be read on paper.

The script shows one moment at a time; what follows a deed stands with the answers until it is done. Deeds stand in the
order of the alphabet until the script shuffles them: the author's order would give the answer away.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from markupsafe import Markup

from journeybook.content.model import Deed, Drill, DrillQuestion, Moment, Question
from journeybook.content.wording import Wording
from journeybook.pages.question_sheet import Html

SCRIPT = "drill"
"""The name in assets of the script that a leaf with drills loads."""
WHOLE = 1000
"""Marks of an end at which everything is right."""


@dataclass(frozen=True, kw_only=True)
class DeedLine:
    """Something that can be done, and what comes of it."""

    id: str
    text: Html
    leads_to: str
    """Id of a moment; empty for a critical error."""
    goes_on_at: int
    """The number that is printed there."""
    told: Html
    """What happens then, or what the critical error does to people."""
    critical: bool
    right: bool
    """Whether full marks can still be had after it."""
    penalty: int


@dataclass(frozen=True, kw_only=True)
class MomentLine:
    """A moment with its printed number."""

    id: str
    number: int
    text: Html
    seconds: int
    late: str
    is_end: bool
    deeds: tuple[DeedLine, ...]


@dataclass(frozen=True, kw_only=True)
class DrillSheet:
    """A drill as the templates show it."""

    title: Html
    situation: Html
    moments: tuple[MomentLine, ...]
    last_number: int
    """Where critical errors lead to; 0 where the drill has none."""


def drill_sheet(
    drill: Drill, wording: Wording, slug: str, without_links: Callable[[Html], Html]
) -> DrillSheet:
    """Return the sheet of a drill; the ids of headings in its texts start with ``slug``."""
    taken: set[str] = set()

    def block(text: str) -> Html:
        return without_links(wording.block(text, slug, taken=taken))

    numbers = {moment.id: number for number, moment in enumerate(_from_the_start(drill), 1)}
    last = len(numbers) + 1 if any(deed.critical for deed in drill.deeds) else 0
    safe = _safe_moments(drill)

    def deed_line(deed: Deed) -> DeedLine:
        told = deed.critical or deed.told
        return DeedLine(
            id=deed.id,
            text=without_links(wording.inline(deed.text)),
            leads_to=deed.leads_to,
            goes_on_at=numbers.get(deed.leads_to, last),
            told=wording.inline(told) if told else "",
            critical=bool(deed.critical),
            right=not deed.penalty and deed.leads_to in safe,
            penalty=deed.penalty,
        )

    return DrillSheet(
        title=without_links(wording.inline(drill.title)),
        situation=block(drill.situation),
        moments=tuple(
            MomentLine(
                id=moment.id,
                number=numbers[moment.id],
                text=block(moment.text),
                seconds=moment.seconds,
                late=moment.late,
                is_end=moment.is_end,
                deeds=tuple(sorted(map(deed_line, moment.deeds), key=_by_alphabet)),
            )
            for moment in _from_the_start(drill)
        ),
        last_number=last,
    )


def drill_scripts(questions: Iterable[Question]) -> tuple[str, ...]:
    """What a leaf with these questions loads for its drills."""
    return (SCRIPT,) if any(isinstance(question, DrillQuestion) for question in questions) else ()


def _by_alphabet(deed: DeedLine) -> str:
    return Markup(deed.text).striptags().casefold()


def _from_the_start(drill: Drill) -> list[Moment]:
    """The moments as written, the one with which it begins before the others."""
    return sorted(drill.moments, key=lambda moment: moment.id != drill.start)


def _safe_moments(drill: Drill) -> set[str]:
    """The moments from which an end of full marks is reached without a penalty."""
    safe = {moment.id for moment in drill.moments if moment.worth == WHOLE}
    while True:
        more = {
            moment.id
            for moment in drill.moments
            if any(deed.leads_to in safe and not deed.penalty for deed in moment.deeds)
        }
        if more <= safe:
            return safe
        safe |= more

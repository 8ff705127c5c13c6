"""Problems as text for a terminal:

Fault Q012   The right answer names an option that is not there.
Where        quizzes/pillar-drill/guard.yml, line 41, column 12; question guard-03
                 41 |     right: c4
                    |            ^^
Mend         Use one of c1, c2, c3, or add an option with id c4.
"""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Iterable, Sequence

from journeybook.diagnostics.excerpt import excerpt, visible
from journeybook.diagnostics.problem import Place, Problem
from journeybook.diagnostics.report import sort_problems, summary

WIDTH = 78
"""Columns of a rendered line; a word that is longer than a line is not broken."""

_LABEL = 13
_NUMBER = 6

LinesOf = Callable[[str], Sequence[str]]
"""File -> its lines, without line breaks; empty when the file cannot be shown."""


def render_problem(problem: Problem, lines_of: LinesOf) -> str:
    """One problem, without a line break at its end."""
    parts = [_labelled(f"{problem.level.value.capitalize()} {problem.code}", problem.message)]
    parts += _located("Where", problem.place, lines_of)
    for place in problem.also_at:
        parts += _located("Also at", place, lines_of)
    parts.append(_labelled("Mend", problem.mend))
    return "\n".join(parts)


def render_text(problems: Iterable[Problem], lines_of: LinesOf) -> str:
    """All problems, sorted, an empty line after each, then the summary; ends in a line break."""
    ordered = sort_problems(problems)
    return "\n\n".join([*(render_problem(problem, lines_of) for problem in ordered), summary(ordered)]) + "\n"


def _located(label: str, place: Place, lines_of: LinesOf) -> list[str]:
    where = place.file if place.length == 0 else f"{place.file}, line {place.line}, column {place.column}"
    parts = [_labelled(label, f"{where}; {place.trail}" if place.trail else where)]
    lines = lines_of(place.file) if place.length else ()
    if 1 <= place.line <= len(lines):
        margin = _LABEL + _NUMBER + len(" | ")
        shown, marker = excerpt(lines[place.line - 1], place.column, place.length, WIDTH - margin)
        parts.append(f"{place.line:>{_LABEL + _NUMBER}} | {shown}".rstrip())
        parts.append(f"{'':>{_LABEL + _NUMBER}} | {marker}")
    return parts


def _labelled(label: str, prose: str) -> str:
    return "\n".join(
        textwrap.wrap(
            visible(prose.replace("\n", " ")),
            WIDTH,
            initial_indent=f"{label:<{_LABEL}}",
            subsequent_indent=" " * _LABEL,
            break_long_words=False,
            break_on_hyphens=False,
        )
    )

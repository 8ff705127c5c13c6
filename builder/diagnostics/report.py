"""The order in which problems are reported, and the line that sums them up."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from journeybook.diagnostics.problem import Level, Problem


def sort_problems(problems: Iterable[Problem]) -> list[Problem]:
    """By file, line, column and code; what is still equal, by message, so that every run reports alike."""
    return sorted(
        problems,
        key=lambda one: (one.place.file, one.place.line, one.place.column, one.code, one.message, one.mend),
    )


def has_fault(problems: Iterable[Problem]) -> bool:
    """True when something stops the build."""
    return any(problem.level is Level.FAULT for problem in problems)


def summary(problems: Sequence[Problem]) -> str:
    """One line such as ``3 faults and 1 warning in 2 files.``"""
    faults = sum(problem.level is Level.FAULT for problem in problems)
    warnings = len(problems) - faults
    if not problems:
        return "No faults and no warnings."
    counted = [_count(number, noun) for number, noun in ((faults, "fault"), (warnings, "warning")) if number]
    files = len({problem.place.file for problem in problems})
    return f"{' and '.join(counted)} in {_count(files, 'file')}."


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"

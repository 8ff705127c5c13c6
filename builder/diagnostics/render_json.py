"""Problems as JSON, for editors and other programs."""

from __future__ import annotations

import json
from collections.abc import Iterable

from journeybook.diagnostics.codes import CODES
from journeybook.diagnostics.problem import Place, Problem
from journeybook.diagnostics.report import sort_problems


def render_json(problems: Iterable[Problem]) -> str:
    """A JSON list, sorted as the text is, one object a problem; ends in a line break.

    Keys of a problem: code, level (fault, warning), title, message, mend, file, line, column, length, trail,
    also-at (a list of objects with the last five). Lines and columns count from 1, in characters. Length 0
    means the whole file.
    """
    return json.dumps(as_data(problems), ensure_ascii=False, indent=1) + "\n"


def as_data(problems: Iterable[Problem]) -> list[dict[str, object]]:
    """The same list before it is written."""
    return [_one(problem) for problem in sort_problems(problems)]


def _one(problem: Problem) -> dict[str, object]:
    return {
        "code": problem.code,
        "level": problem.level.value,
        "title": CODES.get(problem.code, ""),
        "message": problem.message,
        "mend": problem.mend,
        **_place(problem.place),
        "also-at": [_place(place) for place in problem.also_at],
    }


def _place(place: Place) -> dict[str, object]:
    return {
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "length": place.length,
        "trail": place.trail,
    }

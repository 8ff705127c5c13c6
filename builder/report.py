"""Problems as the lines that a terminal or a log shows, with the source lines they point at."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from journeybook.diagnostics.problem import Problem
from journeybook.diagnostics.render_text import render_text
from journeybook.source.decoding import lines_to_show


def lines_of(root: Path, file: str) -> list[str]:
    """The lines of ``root/file`` for showing, or none when it cannot be read; never raises."""
    try:
        return lines_to_show((root / file).read_bytes())
    except OSError:
        return []


def report(problems: Iterable[Problem], root: Path) -> str:
    """The whole report on ``problems``, or an empty text when there are none."""
    return render_text(problems, lambda file: lines_of(root, file))

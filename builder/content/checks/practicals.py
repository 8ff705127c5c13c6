"""Practicals in which everything may be missed."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.file_read import FileRead
from journeybook.content.model import Practical
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem


def check_practicals(file: FileRead) -> Iterator[Problem]:
    """Some step of each practical is critical."""
    for practical in file.every(Practical):
        if not any(step.critical for step in practical.steps):
            yield warning(
                "P001",
                file.place(practical, "steps"),
                "No step of the practical is critical, so every one of them may be missed.",
                "Write `critical: true` at the steps where a miss could hurt somebody.",
            )

"""Lessons show each figure, bench and calculator once: a second one would have the same ids on one page."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.file_read import FileRead
from journeybook.content.model import BlockKind, Lesson
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem

_CODES = {BlockKind.CALCULATOR: "E007", BlockKind.FIGURE: "L006", BlockKind.BENCH: "L006"}
_MENDS = {
    BlockKind.CALCULATOR: "Take one of the two out, or name another calculator.",
    BlockKind.FIGURE: "Take one of the two out; in a text `{{figure.{name}}}` leads to the other.",
    BlockKind.BENCH: "Take one of the two out, or name another bench.",
}


def check_shown_once(file: FileRead) -> Iterator[Problem]:
    """What stands in a lesson twice."""
    for lesson in file.every(Lesson):
        seen: dict[tuple[BlockKind, str], object] = {}
        for block in lesson.body:
            if block.kind in _CODES:
                first = seen.setdefault((block.kind, block.text), block)
                if first is not block:
                    yield fault(
                        _CODES[block.kind],
                        file.place(block),
                        f"The {block.kind} `{block.text}` stands in this lesson twice.",
                        _MENDS[block.kind].format(name=block.text),
                        (file.place(first),),
                    )

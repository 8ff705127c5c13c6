"""The problems of one file as they are found: each once, at a place in the file, and not without end."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.lines import Lines

MOST_PROBLEMS = 200
"""Beyond this many the file is not what it claims to be, and nobody reads on."""


class SeenScalar(NamedTuple):
    """A text or value that the parser read; positions are indexes into the text of the file."""

    start: int
    end: int
    style: str
    """``'``, ``"``, ``|``, ``>``, or empty for one without quotes."""
    spans_lines: bool


class Enough(Exception):  # noqa: N818 - the reading ends; nothing went wrong with the program
    """The problem just noted makes it pointless to read on."""


class Findings:
    """Collects the problems of one file, each once."""

    def __init__(self, file: str, lines: Lines) -> None:
        self.file = file
        self.lines = lines
        self.text = lines.text
        self._found: dict[tuple[str, int], Problem] = {}

    @property
    def problems(self) -> list[Problem]:
        """What was found, in the order of the file."""
        return sorted(self._found.values(), key=lambda one: (one.place.line, one.place.column, one.code))

    def place(self, start: int, end: int | None = None) -> Place:
        """A place in this file; what points past the last character is moved back onto it."""
        last = len(self.text.rstrip()) - 1
        if start > last >= 0:
            return self.lines.place(self.file, last)
        return self.lines.place(self.file, start, end)

    def note(
        self,
        code: str,
        start: int,
        end: int | None,
        message: str,
        mend: str,
        also_at: Iterable[Place] = (),
    ) -> None:
        """Add a fault, unless the same code was noted at the same place."""
        if (code, start) in self._found:
            return
        if len(self._found) >= MOST_PROBLEMS:
            self._found["S033", start] = fault(
                "S033",
                self.place(start),
                f"There are more than {MOST_PROBLEMS} faults; the rest of the file was not read.",
                "Mend the ones before this line first.",
            )
            raise Enough
        self._found[code, start] = fault(code, self.place(start, end), message, mend, also_at)

    def note_file(self, code: str, message: str, mend: str) -> None:
        """Add a fault of the file as a whole."""
        self._found[code, 0] = fault(code, Place(file=self.file, length=0), message, mend)

    def has(self, code: str, start: int) -> bool:
        """True when that code was noted there."""
        return (code, start) in self._found

    def any_on_line(self, line: int) -> bool:
        """True when something was noted on that line."""
        return any(problem.place.line == line for problem in self._found.values())

    def withdraw(self, code: str, start: int, end: int) -> None:
        """Forget problems between two positions that turned out to be the effect of another."""
        for found in [key for key in self._found if key[0] == code and start <= key[1] <= end]:
            del self._found[found]

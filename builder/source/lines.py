"""Where a character stands: from an index into a text to line and column, and back to the line's text.

A line ends at a line feed, a carriage return, or the two together, as every editor has it. Python's
``splitlines`` also breaks at characters that editors show inside a line, so it is not used.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from functools import cached_property
from itertools import accumulate

from journeybook.diagnostics.problem import Place

_LINE_BREAK = re.compile(r"\r\n|\n|\r")


class Lines:
    """A text with its lines; lines and columns count from 1, indexes from 0, all in characters."""

    def __init__(self, text: str) -> None:
        self.text = text

    @cached_property
    def _starts(self) -> list[int]:
        if "\r" not in self.text:  # the rule, and found in half the time
            return [0, *accumulate([len(line) + 1 for line in self.text.split("\n")])][:-1]
        return [0, *(match.end() for match in _LINE_BREAK.finditer(self.text))]

    @property
    def count(self) -> int:
        """How many lines there are; a text that ends in a line break has an empty last one."""
        return len(self._starts)

    def at(self, index: int) -> tuple[int, int]:
        """Line and column of the character at ``index``."""
        if index == 0:
            return 1, 1  # Most files are never asked for more than where they begin.
        line = bisect_right(self._starts, index)
        return line, index - self._starts[line - 1] + 1

    def start(self, line: int) -> int:
        """Index of the first character of a line."""
        return self._starts[line - 1]

    def line_text(self, line: int) -> str:
        """A line without its line break; empty when there is no such line."""
        if not 1 <= line <= len(self._starts):
            return ""
        start = self._starts[line - 1]
        end = self._starts[line] if line < len(self._starts) else len(self.text)
        return self.text[start:end].rstrip("\r\n")

    def rest(self, index: int) -> str:
        """What is left of the line from ``index`` on, without its line break."""
        line, column = self.at(index)
        return self.line_text(line)[column - 1 :]

    def place(self, file: str, start: int, end: int | None = None, trail: str = "") -> Place:
        """The place between two indexes; its length stays within the first line, and is 1 at least."""
        start = max(0, min(start, len(self.text)))
        line, column = self.at(start)
        wanted = 1 if end is None else end - start
        if wanted > 1 and (line == len(self._starts) or start + wanted > self._starts[line] - 2):
            wanted = min(wanted, len(self.line_text(line)) - column + 1)  # It may reach into the line break.
        return Place(file=file, line=line, column=column, length=max(1, wanted), trail=trail)

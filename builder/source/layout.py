"""Slips of layout: a tab, a space left out, a quote left open. They hide keys and items inside texts."""

from __future__ import annotations

import re

from journeybook.source.findings import Findings

KEY_WITHOUT_SPACE = re.compile(r"(?:- +)*([a-z][a-z0-9]*(?:-[a-z0-9]+)*):(?=[^\s/])")
"""``title:Demo`` at the start of a line; the slash keeps web addresses out."""

_ITEM_KEY_WITHOUT_SPACE = re.compile(r"[a-z]+(?:-[a-z]+)*:(?=[\"'A-Z\[{])")
_DASH_WITHOUT_SPACE = re.compile(r"-[^\s\-.0-9]")
_TAB_INDENT = re.compile(r"(?:^|(?<=[\r\n])) *\t[ \t]*(?=[^\s])")
_HASH_AFTER_SPACE = re.compile(r"#(?<=[ \t]#)")


def ends_before_hash(text: str) -> set[int]:
    """Where something ends that is followed by spaces and a ``#`` on the same line."""
    ends: set[int] = set()
    for match in _HASH_AFTER_SPACE.finditer(text):
        end = match.start()
        while end and text[end - 1] in " \t":
            end -= 1
        ends.add(end)
    return ends


class LayoutRefusals(Findings):
    """The refusals that are about spaces, tabs and quotes."""

    def check_tabs(self, spans: list[tuple[int, int]]) -> None:
        """Tabs before the first character of a line, outside of quoted and block texts."""
        position = 0
        for match in _TAB_INDENT.finditer(self.text):
            while position < len(spans) and spans[position][1] <= match.start():
                position += 1
            if position < len(spans) and spans[position][0] < match.start():
                continue
            self.tab(match.start() + match.group().index("\t"))

    def tab(self, index: int) -> None:
        """A tab in the indentation."""
        self.note(
            "S006",
            index,
            None,
            "The line is indented with a tab.",
            "Use spaces; most editors can turn tabs into spaces for the whole file.",
        )

    def check_quoted_lines(self, start: int, end: int) -> None:
        """A quoted text over several lines, one of which stands too far to the left to belong to it."""
        line, column = self.lines.at(start)
        lead = len(self.lines.line_text(line)) - len(self.lines.line_text(line).lstrip(" "))
        least = lead if column == lead + 1 else lead + 1
        last, _ = self.lines.at(end)
        for number in range(line + 1, last + 1):
            text = self.lines.line_text(number)
            if text.strip() and len(text) - len(text.lstrip(" \t")) < least:
                self.quote_open(start, number)
                return

    def quote_open(self, start: int, line: int | None = None) -> None:
        """A quote that is closed nowhere, or too late: ``line`` is the first that it swallowed."""
        quote = self.text[start : start + 1]
        if line is None:
            message = f"The quote {quote} that opens here is never closed."
            mend = f"Close the quote with {quote} at the end of the text."
        else:
            message = (
                f"The quote {quote} that opens here is not closed on its line,"
                f" so line {line} was taken for part of the text."
            )
            mend = f"Close the quote with {quote}, or indent the lines that belong to the text."
        self.note("S020", start, start + len(self.lines.rest(start)), message, mend)

    def check_dash(self, start: int, written: str) -> None:
        """``-item`` at the start of a line."""
        if self.lacks_space_after_dash(start, written):
            self.no_space_after_dash(start)

    def no_space_after_dash(self, start: int) -> None:
        """A dash that was meant to start an item."""
        self.note(
            "S025",
            start,
            start + 2,
            "A space is missing after the dash.",
            "Write a space after the dash; put a text that starts with a dash in quotes.",
        )

    def check_colon(self, start: int, written: str) -> None:
        """``- key:Value``: an item that was meant to be a mapping."""
        if match := _ITEM_KEY_WITHOUT_SPACE.match(written):
            self.note(
                "S024",
                start,
                start + match.end(),
                f"A space is missing after {match.group()} here.",
                "Write a space after the colon; or put the whole text in quotes.",
            )

    def no_space_after_colon(self, start: int, match: re.Match[str]) -> None:
        """``key:value``; the match is the key's, its position counted from ``start``."""
        self.note(
            "S024",
            start,
            start + match.end(),
            f"A space is missing after {match.group(1)}: here.",
            "Write a space after the colon; or put the whole text in quotes.",
        )

    def _begins_line(self, start: int) -> bool:
        line, _ = self.lines.at(start)
        return not self.text[self.lines.start(line) : start].strip()

    def lacks_space_after_dash(self, start: int, written: str) -> bool:
        """True for a text such as ``-item`` that is the first thing on its line."""
        return _DASH_WITHOUT_SPACE.match(written) is not None and self._begins_line(start)

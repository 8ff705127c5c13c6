"""What the strict reader refuses, in words: a method for each thing wrong in a file that can be parsed.

All positions are indexes into the text. ``Enough`` ends the reading where going on would make no sense.
"""

from __future__ import annotations

import re

from journeybook.source.decoding import UNSEEN, name_of
from journeybook.source.findings import Enough, SeenScalar
from journeybook.source.layout import KEY_WITHOUT_SPACE, LayoutRefusals
from journeybook.source.plain_values import other_reading

_KEY = re.compile(r"[\w-]+:(?:\s|\Z)")
_LONG_DASHES = "\u2010\u2011\u2012\u2013\u2014\u2022\u2212"
_LOOKS_LIKE_INDENT = re.compile(f" *(?:[\u00a0\u2007\u202f\u3000]|[{_LONG_DASHES}](?= ))")
"""Word processors put these for a hyphen at the start of a line, and for spaces."""
_PROPERTY = re.compile(r"[&!][^\s,\[\]{}]*")


class Refusals(LayoutRefusals):
    """One method for each thing that is refused."""

    # Whole files

    def empty(self) -> None:
        """Nothing, or nothing but comments and a line of dashes."""
        message = "There are no keys in this file." if self.text.strip() else "There is nothing in this file."
        self.note_file("S007", message, "Write its keys, or delete the file.")

    def no_keys(self, scalar: SeenScalar | None) -> None:
        """One text where keys and values are expected."""
        start = scalar.start if scalar else 0
        if self.has("S024", start) or self.has("S025", start):
            return
        first_line = self.lines.rest(start)
        if missing := KEY_WITHOUT_SPACE.match(first_line):
            self.no_space_after_colon(start, missing)
        else:
            self.note(
                "S008",
                start,
                start + len(first_line),
                "The file holds one text, not keys and values.",
                'Write it as keys and values, such as title: "…".',
            )

    def second_document(self, index: int) -> None:
        """A line of three dashes in mid-file."""
        self.note(
            "S009",
            index,
            index + 3,
            "A second document starts here; a file holds one.",
            "Delete the line of three dashes, or move what follows into a file of its own.",
        )
        raise Enough

    def directive(self, index: int) -> None:
        """``%YAML 1.1`` and its like."""
        sign = self.text.find("%", index)
        self.note(
            "S032",
            max(sign, 0),
            max(sign, 0) + len(self.lines.rest(max(sign, 0))),
            "A line that starts with % gives orders to the program that reads it.",
            "Delete the line.",
        )

    # Keys

    def twice(self, start: int, end: int, key: str, mapping: dict[str, object], starts: list[int]) -> None:
        """A key that is already there."""
        first = starts[2 * list(mapping).index(key) + 1]
        place = self.place(first, first + end - start)
        self.note(
            "S010",
            start,
            end,
            f"The key {key} stands twice, first on line {place.line}.",
            "Delete one of the two, or give it the name that was meant.",
            [place],
        )

    def key_not_text(self, start: int, end: int, key: str) -> None:
        """A key that some programs take for a number, true or false, or nothing."""
        if key == "<<":
            self.note(
                "S012",
                start,
                end,
                "The key << would merge another mapping into this one.",
                "Write out the keys that are meant.",
            )
        elif not key:
            self.note("S011", start, None, "A key is missing before the colon.", "Write the key.")
        else:
            self.note(
                "S011",
                start,
                end,
                f"The key {key} is not text to every program.",
                f'Put it in quotes: "{key}".',
            )

    def key_is_collection(self, index: int) -> None:
        """A list, a mapping or an alias where a key is expected."""
        self.note(
            "S011",
            index,
            None,
            "A list or a mapping stands where a key is expected.",
            "Write a word as the key; put a text that starts with a bracket or brace in quotes.",
        )
        raise Enough

    # Values

    def unsure(self, start: int, end: int, written: str) -> None:
        """A value that programs read differently."""
        mend = f'Put it in quotes: "{written}".'
        reading = other_reading(written)
        if reading in ("true", "false"):
            mend = f'Put it in quotes if it is text: "{written}"; or write {reading}.'
        elif reading == "nothing":
            mend = f'Put it in quotes if it is text: "{written}"; or leave the key out.'
        self.note(
            "S016",
            start,
            end,
            f"Some programs read {written} as {reading}, others do not.",
            mend,
        )

    def runs_on(self, start: int, end: int, written: str) -> None:
        """A text without quotes that takes in the next line."""
        first_line = self.lines.rest(start)
        if missing := KEY_WITHOUT_SPACE.match(first_line):
            self.no_space_after_colon(start, missing)
            return
        if self.lacks_space_after_dash(start, written):
            self.no_space_after_dash(start)
            return
        if self._lookalike(start):
            return
        after = re.compile(r"\S").search(self.text, start + len(first_line))
        second = after.start() if after else start
        line, _ = self.lines.at(start)
        if self.text.startswith("- ", second):
            mend = "Indent the dash like the dashes it belongs with; or put the whole text in quotes."
        elif _KEY.match(self.text, second):
            mend = "Indent the key like the keys it belongs with; or put the whole text in quotes."
        else:
            mend = "Put the whole text in quotes, or write it below a | sign."
        self.note(
            "S017",
            second,
            min(end, second + len(self.lines.rest(second))),
            f"This line was read as part of the text that starts on line {line}.",
            mend,
            [self.place(start, start + len(first_line))],
        )

    def _lookalike(self, start: int) -> bool:
        """True when the line begins with a character that only looks like a dash or a space; then noted."""
        line, _ = self.lines.at(start)
        begin = self.lines.start(line)
        found = _LOOKS_LIKE_INDENT.match(self.text, begin)
        if found is None:
            return False
        at, character = found.end() - 1, found[0][-1]
        if character in _LONG_DASHES:
            message = f"The sign {character} looks like a dash and starts no entry."
            self.note("S026", at, None, message, "Write a plain hyphen and a space: `- `.")
        else:
            message = f"The character {name_of(character)} stands where spaces belong."
            self.note(
                "S004",
                at,
                None,
                message,
                "Delete it and type plain spaces; it comes along when text is pasted.",
            )
        return True

    def lost_behind_hash(self, end: int) -> None:
        """A ``#`` after a text without quotes, or where a text was expected."""
        sign = self.text.index("#", end)
        self.note(
            "S018",
            sign,
            sign + len(self.lines.rest(sign)),
            "Everything from the # on is lost: it counts as a comment.",
            "Put the whole text in quotes if the # belongs to it; or move the comment to a line of its own.",
        )

    def too_deep(self, index: int) -> None:
        """More levels than any file of a course has."""
        self.note(
            "S019",
            index,
            None,
            "More than 40 lists and mappings stand one inside the other here.",
            "Look for brackets or dashes that should not be there.",
        )
        raise Enough

    def alias(self, start: int, end: int) -> None:
        """``*name``."""
        self.note(
            "S014",
            start,
            end,
            f"{self.text[start:end]} is an alias: it would put in what stands elsewhere.",
            "Write out what is meant; put a text that starts with * in quotes.",
        )

    def property_of(self, start: int) -> None:
        """Anchors and tags before a value, in either order."""
        position = start
        while match := _PROPERTY.match(self.text, position):
            name = match.group()
            if name[0] == "&":
                self.note(
                    "S013",
                    position,
                    match.end(),
                    f"{name} is an anchor: it names what follows, to be put in elsewhere.",
                    "Delete it; put a text that starts with & in quotes.",
                )
            else:
                self.note(
                    "S015",
                    position,
                    match.end(),
                    f"{name} is a tag: it would change how the value is read.",
                    "Delete it; put a text that starts with ! in quotes.",
                )
            position = match.end()
            while self.text[position : position + 1].isspace():
                position += 1

    def check_escapes(self, start: int, end: int, value: str) -> None:
        """Characters that cannot be seen, written with a backslash."""
        if unseen := UNSEEN.search(value):
            self.note(
                "S004",
                start,
                end,
                f"A backslash here stands for {name_of(unseen.group())}, which cannot be seen or printed.",
                "Delete it.",
            )

    def unreadable(self, scalar: SeenScalar | None) -> None:
        """Something that has no better name."""
        start = scalar.end if scalar else 0
        self.note(
            "S034",
            start,
            None,
            "From here on the file cannot be read.",
            "Look for a missing quote, bracket or colon on this line and the one above.",
        )

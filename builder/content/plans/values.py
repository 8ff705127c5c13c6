"""Numbers and words of a plan: exact, with the values of the sheets in place, and nothing off its scale."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import NamedTuple

from journeybook.content.arithmetic import Flaw
from journeybook.content.file_read import FileRead
from journeybook.content.formats.plan_files import AtFile, RangeFile
from journeybook.content.model import Bench, Value
from journeybook.content.number_values import given_number
from journeybook.content.references import Reference, RefersTo, replace_references
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.drawing.plans.gauge import At
from journeybook.drawing.plans.sheet import Number, plain

_NO_BREAK = "\N{NO-BREAK SPACE}"
_SHEET = re.compile(r"\{(kit|profile)\.([a-z0-9-]+)")


class Known(NamedTuple):
    """What a plan may name."""

    values: Mapping[str, Mapping[str, Value]]
    """``kit`` and ``profile`` -> their values by id."""
    words: Mapping[str, str]
    """Id of a word of the glossary -> the word."""
    benches: Mapping[str, Bench]
    """By id, as far as they are sound."""


class Where(NamedTuple):
    """A text in the file: the object it was read into, the key, and the entry of a list."""

    thing: object
    key: str
    entry: int | None = None


class UnsoundError(Exception):
    """What is needed to go on is not there; what is wrong has been noted, here or elsewhere."""


@dataclass(kw_only=True)
class Values:
    """Reads the texts of one plan, and notes what is wrong with them.

    What is named and is not there makes the plan unsound and is no problem here: the checks of references tell it.
    """

    file: FileRead
    known: Known
    problems: list[Problem] = field(default_factory=list)
    is_sound: bool = True

    def refuse(self, code: str, where: Where, message: str, mend: str) -> None:
        """Note a fault."""
        self.is_sound = False
        self.problems.append(fault(code, self.file.place(*where), message, mend))

    def text(self, thing: object, key: str, written: str) -> str:
        """Words with their references replaced; links are refused."""

        def put(reference: Reference) -> str:
            match reference.to:
                case RefersTo.KIT | RefersTo.PROFILE:
                    value = self.known.values[reference.to.value].get(reference.name)
                    if value is not None:
                        bare = reference.number_only or not value.unit
                        return value.value if bare else f"{value.value}{_NO_BREAK}{value.unit}"
                case RefersTo.WORD if reference.name in self.known.words:
                    return reference.wording or self.known.words[reference.name]
                case RefersTo.LESSON | RefersTo.FIGURE:
                    self.refuse(
                        "F028",
                        Where(thing, key),
                        f"`{reference.written}` is a link, and words on a drawing lead nowhere.",
                        "Write the words themselves, and put the link into the text beside the figure.",
                    )
            self.is_sound = False
            return reference.written

        return replace_references(written, put).strip()

    def number(self, where: Where, written: str) -> Fraction:
        """The exact number; raises ``UnsoundError`` where there is none."""
        name = _SHEET.search(written)
        if name is not None and name[2] not in self.known.values[name[1]]:
            raise UnsoundError
        number = given_number(written.strip().replace(".number}", "}"), self.known.values)
        if isinstance(number, Flaw):
            self.refuse("F020", where, f"{number.message}.", number.mend)
            raise UnsoundError
        return number

    def number_if_sound(self, where: Where, written: str) -> Fraction | None:
        """The same, or None: to go on and find what else is wrong."""
        try:
            return self.number(where, written)
        except UnsoundError:
            self.is_sound = False
            return None

    def ends(self, thing: object, low: str, high: str) -> tuple[Fraction, Fraction]:
        """``from`` and ``to`` of something; raises ``UnsoundError`` where they are no range."""
        begins = self.number_if_sound(Where(thing, "from"), low)
        ends = self.number_if_sound(Where(thing, "to"), high)
        if begins is None or ends is None:
            raise UnsoundError
        if begins >= ends:
            self.refuse(
                "F022",
                Where(thing, "to"),
                f"It begins at {plain(begins)} and ends at {plain(ends)}.",
                "Let `to` be larger than `from`.",
            )
            raise UnsoundError
        return begins, ends

    def on_scale(self, where: Where, number: Number, low: Number, high: Number) -> None:
        """Note a number that is not between the two."""
        if not low <= number <= high:
            self.refuse(
                "F021",
                where,
                f"{plain(number)} is not on the scale, which goes from {plain(low)} to {plain(high)}.",
                "Correct the number, or widen the scale.",
            )

    def part(self, one: RangeFile, low: Number, high: Number) -> tuple[Fraction, Fraction] | None:
        """A range on a scale."""
        try:
            begins, ends = self.ends(one, one.low, one.high)
        except UnsoundError:
            self.is_sound = False
            return None
        self.on_scale(Where(one, "from"), begins, low, high)
        self.on_scale(Where(one, "to"), ends, low, high)
        return begins, ends

    def places(self, written: Iterable[AtFile], low: Number, high: Number) -> tuple[At, ...]:
        """Named places on a scale."""
        found = []
        for one in written:
            name = self.text(one, "name", one.name)
            number = self.number_if_sound(Where(one, "at"), one.at)
            if number is not None:
                self.on_scale(Where(one, "at"), number, low, high)
                found.append(At(at=number, name=name))
        return tuple(found)

"""References inside texts.

Each brace names something that is there, in the place where such a name is allowed.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

from journeybook.content.file_read import FileRead
from journeybook.content.gathered import Gathered, Naming
from journeybook.content.model import CalculatorInput, CalculatorResult, NumberQuestion, Preset, Slip
from journeybook.content.references import KINDS, Reference, RefersTo, Unreadable, meant_by, references_in
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.near import choice_of
from journeybook.source.reading import Origin

_NAMING = {
    RefersTo.KIT: (Naming.KIT, "W001", "to kit.yml"),
    RefersTo.PROFILE: (Naming.PROFILE, "W002", "to each file in profiles/"),
    RefersTo.WORD: (Naming.WORD, "W003", "to words.yml"),
    RefersTo.LESSON: (Naming.LESSON, "W004", "as a lesson"),
    RefersTo.FIGURE: (Naming.FIGURE, "W005", "to figures/"),
    RefersTo.PRACTICAL: (Naming.PRACTICAL, "W010", "to practicals/"),
    RefersTo.JOB_CARD: (Naming.JOB_CARD, "W011", "to job-cards/"),
}
_EXPRESSIONS = frozenset({"right", "value", "tolerance", "given", "formula", "start", "least", "most"})
"""Fields that are arithmetic; braces there are read by ``checks.numbers`` and ``checks.calculators``."""


def check_wording(got: Gathered) -> Iterator[Problem]:
    """Every brace in a text is a reference to something, or has a backslash before it."""
    for file in got.files:
        braces = file.worked_out(_read_braces, None)
        yield from braces.problems
        if got.lacks_any(braces.named):
            for brace in _braces(file):
                yield from _check_name(got, brace)


class _Brace(NamedTuple):
    """One brace in a text, and where the text stands."""

    reference: Reference | Unreadable
    origin: Origin
    container: object
    at: str | int

    def place(self) -> Place:
        return place_within(self.origin, self.container, self.at, self.reference.written)


class _Braces(NamedTuple):
    """What the braces of one file name, and what is wrong with them whatever the other files hold."""

    named: frozenset[tuple[Naming, str]]
    problems: list[Problem]


def _read_braces(file: FileRead, _: None) -> _Braces:
    braces = list(_braces(file))
    named = frozenset(
        [
            (_NAMING[brace.reference.to][0], brace.reference.name)
            for brace in braces
            if isinstance(brace.reference, Reference) and brace.reference.to in _NAMING
        ]
    )
    return _Braces(named, list(_check_braces(file, braces)))


def _braces(file: FileRead) -> Iterator[_Brace]:
    for origin in file.origins.values():
        data = origin.container
        for key, value in data.items():
            if type(value) is str:
                if "{" in value:
                    yield from _braces_of(origin, data, key, key, value)
            elif type(value) is list:
                for index, entry in enumerate(value):
                    if type(entry) is str and "{" in entry:
                        yield from _braces_of(origin, value, index, key, entry)
                    elif type(entry) is list:  # a row of a table
                        for column, cell in enumerate(entry):
                            if type(cell) is str and "{" in cell:
                                yield from _braces_of(origin, entry, column, key, cell)


def _braces_of(origin: Origin, container: object, at: str | int, key: str, text: str) -> Iterator[_Brace]:
    if key in _EXPRESSIONS and _is_arithmetic(origin):
        return
    for reference in references_in(text):
        yield _Brace(reference, origin, container, at)


def _check_braces(file: FileRead, braces: Sequence[_Brace]) -> Iterator[Problem]:
    for brace in braces:
        reference = brace.reference
        if isinstance(reference, Unreadable):
            yield fault(
                "W006",
                brace.place(),
                f"The brace in `{reference.written}` opens no reference.",
                _mend_of(reference.written),
            )
        elif reference.to is RefersTo.GIVEN:
            given = _given_names(file, brace.origin)
            if reference.name not in given:
                yield _unknown_given(reference, given, brace.place())


def _check_name(got: Gathered, brace: _Brace) -> Iterator[Problem]:
    reference = brace.reference
    if isinstance(reference, Unreadable) or reference.to not in _NAMING:
        return
    naming, code, where = _NAMING[reference.to]
    if got.names[naming].lacks(reference.name):
        yield fault(
            code,
            brace.place(),
            f"There is no {naming} called `{reference.name}`.",
            f"{got.names[naming].hint(reference.name)} `{reference.name}` {where}.",
        )


def _is_arithmetic(origin: Origin) -> bool:
    return isinstance(origin.thing, (NumberQuestion, Slip, CalculatorInput, CalculatorResult, Preset))


def _given_names(file: FileRead, origin: Origin) -> frozenset[str]:
    """Names that braces without a dot may use: those of the number question the text belongs to."""
    thing = origin.thing
    if isinstance(thing, Slip):
        whole = (one for one in file.every(NumberQuestion) if any(slip is thing for slip in one.slips))
        thing = next(whole, None)
    return (
        frozenset(name for row in thing.given for name in row)
        if isinstance(thing, NumberQuestion)
        else frozenset()
    )


def _unknown_given(reference: Reference, given: frozenset[str], place: Place) -> Problem:
    if given:
        return fault(
            "Q043",
            place,
            f"`{{{reference.name}}}` is not among the given numbers.",
            f"{choice_of(sorted(given))}, or add `{reference.name}` to every row of `given`.",
        )
    return fault(
        "W006",
        place,
        f"`{{{reference.name}}}` names nothing; only number questions have given numbers.",
        _mend_of(f"{{{reference.name}}}"),
    )


def _mend_of(written: str) -> str:
    """The reference that was meant, or one of each sort; a brace may be meant as such, too."""
    likely = meant_by(written)
    shown = [likely] if likely else [f"{{{kind}.NAME}}" for kind in KINDS]
    listed = ", ".join(f"`{one}`" for one in shown[:-1])
    last = f"`{shown[-1]}`"
    cure = f"Write it like {listed} or {last}" if listed else f"Write {last}"
    return f"{cure}, or put a backslash before a brace that is meant as such."


def place_within(origin: Origin, container: object, at: str | int, written: str) -> Place:
    """Where some words of a text stand, where they can be found on its lines; else the text."""
    place = origin.document.place(container, at, trail=origin.trail)
    column = place.column - 1
    for line in range(place.line, place.line + _MOST_LINES):
        found = origin.document.line_text(line).find(written, column)
        if found >= 0:
            return replace(place, line=line, column=found + 1, length=len(written))
        column = 0
    return place


_MOST_LINES = 400
"""How far down a text is searched."""

"""References inside texts.

Each brace names something that is there, in the place where such a name is allowed.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from journeybook.content.gathered import Gathered, Naming
from journeybook.content.model import NumberQuestion, Slip
from journeybook.content.references import Reference, RefersTo, Unreadable, references_in
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Place, Problem
from journeybook.source.reading import Origin

_NAMING = {
    RefersTo.KIT: (Naming.KIT, "W001", "to kit.yml"),
    RefersTo.PROFILE: (Naming.PROFILE, "W002", "to each file in profiles/"),
    RefersTo.WORD: (Naming.WORD, "W003", "to words.yml"),
    RefersTo.LESSON: (Naming.LESSON, "W004", "as a lesson"),
    RefersTo.FIGURE: (Naming.FIGURE, "W005", "to figures/"),
}
_EXPRESSIONS = frozenset({"right", "value", "tolerance", "given"})
"""Fields of number questions that are arithmetic; braces there are read by ``checks.numbers``."""


def check_wording(got: Gathered) -> Iterator[Problem]:
    """Every brace in a text is a reference to something, or has a backslash before it."""
    for origin in got.origins.values():
        data = origin.container
        for key, value in data.items():
            if type(value) is str:
                if "{" in value:
                    yield from _check_text(got, origin, data, key, key, value)
            elif type(value) is list:
                for index, entry in enumerate(value):
                    if type(entry) is str and "{" in entry:
                        yield from _check_text(got, origin, value, index, key, entry)


def _check_text(
    got: Gathered, origin: Origin, container: object, at: str | int, key: str, text: str
) -> Iterator[Problem]:
    if key in _EXPRESSIONS and _is_arithmetic(origin):
        return
    given = _given_names(got, origin)
    for reference in references_in(text):
        place = _place_of(origin, container, at, reference.written)
        if isinstance(reference, Unreadable):
            yield fault(
                "W006",
                place,
                f"The brace in `{reference.written}` opens no reference.",
                "Write it like `{kit.NAME}` or `{word.NAME}`, or put a backslash before a brace that is "
                "meant as such.",
            )
        elif reference.to is RefersTo.GIVEN:
            if reference.name not in given:
                yield _unknown_given(reference, given, place)
        else:
            naming, code, where = _NAMING[reference.to]
            if got.names[naming].lacks(reference.name):
                yield fault(
                    code,
                    place,
                    f"There is no {naming} called `{reference.name}`.",
                    f"{got.names[naming].hint(reference.name)} `{reference.name}` {where}.",
                )


def _is_arithmetic(origin: Origin) -> bool:
    return isinstance(origin.thing, (NumberQuestion, Slip))


def _given_names(got: Gathered, origin: Origin) -> frozenset[str]:
    """Names that braces without a dot may use: those of the number question the text belongs to."""
    thing = origin.thing
    if isinstance(thing, Slip):
        thing = got.question_of_slip.get(id(thing))
    return (
        frozenset(name for row in thing.given for name in row)
        if isinstance(thing, NumberQuestion)
        else frozenset()
    )


def _unknown_given(reference: Reference, given: frozenset[str], place: Place) -> Problem:
    if given:
        names = ", ".join(f"`{name}`" for name in sorted(given))
        return fault(
            "Q043",
            place,
            f"`{{{reference.name}}}` is not among the given numbers.",
            f"Use one of {names}, or add `{reference.name}` to every row of `given`.",
        )
    return fault(
        "W006",
        place,
        f"`{{{reference.name}}}` names nothing; only number questions have given numbers.",
        "Write it like `{kit.NAME}` or `{word.NAME}`, or put a backslash before a brace that is meant as "
        "such.",
    )


def _place_of(origin: Origin, container: object, at: str | int, written: str) -> Place:
    """The brace itself, where it can be found on the lines of its text; else the text."""
    place = origin.document.place(container, at, trail=origin.trail)
    column = place.column - 1
    for line in range(place.line, place.line + _MOST_LINES):
        found = origin.document.line_text(line).find(written, column)
        if found >= 0:
            return replace(place, line=line, column=found + 1, length=len(written))
        column = 0
    return place


_MOST_LINES = 400
"""How far down a text is searched for its brace."""

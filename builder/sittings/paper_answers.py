"""An answer as it stands on paper, in letters and numbers, as the raw answer that marking reads.

Letters A, B, C … count what was drawn for the form, in its order; the same in numbers, from 1, is taken too. ``-`` is
a place left empty.

| kind | on paper |
|---|---|
| choice, spot | one letter |
| choices, order, drill | letters, for order and drill in their order |
| match | for each item of the question, in the printed order, the letter of its answer |
| triage | for each unit, in the drawn order, the letter of its place |
| number | the number as written, then its unit |
| setting | for each control its place, a number from 1 |
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from journeybook.marking.answer_letters import LETTERS, letters
from journeybook.marking.kind import Json, Key

_APART = re.compile(r"[\s,;]+")
_COUNT = re.compile(r"[1-9][0-9]{0,2}")
_NUMBER_THEN_UNIT = re.compile(r"([+\-\u2212]?[0-9][0-9.,\s]*|[+\-\u2212]?[.,][0-9]+)(.*)", re.DOTALL)


class NotThisKind(ValueError):  # noqa: N818 - it says what is wrong
    """What was keyed cannot be an answer to the question; the text says what would be."""


def raw_answer(key: Key, drawn: Sequence[str], text: str) -> Json:
    """Return the raw answer; None where nothing was answered. ``drawn``: the ids in the form's order.

    Raises NotThisKind.
    """
    text = text.strip()
    kind: str = key["kind"]
    if text in ("", "-"):
        return None
    if kind == "number":
        return _number(key, text)
    if kind == "setting":
        return _setting(key, text)
    if kind in ("choice", "spot"):
        (one,) = _picked(text, drawn, 1)
        return _there(one)
    if kind in ("choices", "order", "drill"):
        ids = [_there(each) for each in _picked(text, drawn, None)]
        if kind != "drill" and len(set(ids)) != len(ids):
            raise NotThisKind("a letter stands there twice")
        if kind == "order" and len(ids) != len(drawn):
            raise NotThisKind(f"each of {_span(len(drawn))} stands there once, in the order chosen")
        return [each for each in key["options"] if each in ids] if kind == "choices" else [*ids]
    if kind == "match":
        return _by_row(key["items"], _picked(text, drawn, len(key["items"])), once=True)
    if kind == "triage":
        return _by_row(drawn, _picked(text, key["places"], len(drawn)), once=False)
    raise NotThisKind(f"questions of the kind {kind} are not answered on paper")


def hint(key: Key, drawn: Sequence[str]) -> str:
    """What to key for a question, in words."""
    kind: str = key["kind"]
    span = _span(len(drawn))
    if kind in ("choice", "spot"):
        return f"one of {span}"
    if kind == "choices":
        return f"any of {span}"
    if kind == "order":
        return f"all of {span}, in the order chosen"
    if kind == "match":
        return f"for each of {len(key['items'])} items one of {span}, or -"
    if kind == "triage":
        return f"for each of {len(drawn)} units one of {_span(len(key['places']))}, or -"
    if kind == "number":
        units = ", ".join(key["units"])
        return f"the number as written{f' and its unit ({units})' if units else ''}"
    if kind == "setting":
        return "for each control its place, from 1"
    return f"of {span} those done, in their order"


def _span(count: int) -> str:
    marks = letters(max(count, 1))
    return f"{marks[0]} to {marks[-1]}"


def _picked(text: str, drawn: Sequence[str], count: int | None) -> list[str | None]:
    marks = [mark for mark in _APART.split(text.upper()) if mark]
    if len(marks) == 1 and len(marks[0]) > 1 and not _COUNT.fullmatch(marks[0]):
        marks = list(marks[0])
    if count is not None and len(marks) != count:
        raise NotThisKind(
            f"{count} {'letter belongs' if count == 1 else 'letters belong'} there, one of {_span(len(drawn))} each"
        )
    return [_meant(mark, drawn) for mark in marks]


def _meant(mark: str, drawn: Sequence[str]) -> str | None:
    if mark == "-":
        return None
    of_letter = LETTERS.find(mark) if len(mark) == 1 else -1
    index = int(mark) - 1 if _COUNT.fullmatch(mark) else of_letter
    if not 0 <= index < len(drawn):
        raise NotThisKind(f"“{mark[:20]}” is none of {_span(len(drawn))}")
    return drawn[index]


def _there(found: str | None) -> str:
    if found is None:
        raise NotThisKind("a dash stands for an empty row, and this question has none")
    return found


def _by_row(rows: Sequence[str], given: Sequence[str | None], *, once: bool) -> Json:
    held = {row: answer for row, answer in zip(rows, given, strict=True) if answer is not None}
    if once and len(set(held.values())) != len(held):
        raise NotThisKind("a letter stands there twice, and each answer serves once")
    answers: dict[str, Json] = {**held}
    return answers or None


def _number(key: Key, text: str) -> Json:
    found = _NUMBER_THEN_UNIT.fullmatch(text)
    if found is None:
        return {"value": text, "unit": ""}
    value, unit = found[1].strip(), found[2].strip()
    if unit and unit not in key["units"]:
        known = ", ".join(key["units"])
        raise NotThisKind(
            f"“{unit[:20]}” is no unit of this question"
            + (f"; it has {known}" if known else ", which has none")
        )
    return {"value": value, "unit": unit}


def _setting(key: Key, text: str) -> Json:
    places = [mark for mark in _APART.split(text) if mark]
    controls: Sequence[str] = key["controls"]
    fits = len(places) == len(controls) and all(
        _COUNT.fullmatch(place) and int(place) <= count
        for place, count in zip(places, key["counts"], strict=True)
    )
    if not fits:
        told = ", ".join(
            f"{control} 1 to {count}" for control, count in zip(controls, key["counts"], strict=True)
        )
        raise NotThisKind(f"a number for each control belongs there: {told}")
    return {control: int(place) - 1 for control, place in zip(controls, places, strict=True)}

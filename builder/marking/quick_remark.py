"""Marking very many records of one course: the result of a record that is in order, at a fraction of the time.

What a record should look like is worked out as text and compared with it, so hardly anything is parsed: the form from
its seed, the rest by expressions that let through nothing but canonical JSON, each answer by what the very same text
was worth before. ``None`` says nothing against a record: ``remark.Marker.re_mark`` then reads it piece by piece, and
says what is wrong. What gets a result here gets the same there (``tests/property/test_quick_remark.py``).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import datetime
from typing import Any, TypeAlias

from journeybook.marking import canonical
from journeybook.marking.attempt import FORMAT, LONGEST_TEXT
from journeybook.marking.kind import Key, Marked
from journeybook.marking.mark import mark
from journeybook.marking.quick_form import QuickForms
from journeybook.marking.result import ended_critically, with_marks

_ID = rf'"[^"\\\x00-\x1f]{{1,{LONGEST_TEXT}}}"'
_TEXT = rf'"[^"\\\x00-\x1f]{{0,{LONGEST_TEXT}}}"'
_STAMP = r'"([0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z)"'
_ANSWERS = re.compile(
    r'"([^"\\\x00-\x1f]+)":("[^"\\\x00-\x1f]*"|null|\[[^\[\]{}]*\]|\{[^\[\]{}]*\})(?:,|\Z)'
)  # fmt: skip
_BEGINS = '{"answers":{'
_MIDDLE = '},"avoid":'
_END_OF_FORM = '],"format":"'
_REMEMBERED = 4096
"""Answers to one question that are remembered: what people type has no end."""


_Worth: TypeAlias = tuple[int, bool]
"""Marks, and whether a critical error ended a drill."""


class QuickMarker:
    """A compiled course that marks records which are in order; made by ``remark.Marker``."""

    def __init__(self, compiled: Mapping[str, Any], digest: str, outcomes: Mapping[str, str]) -> None:
        """Take the content of a compiled.json that has everything marking reads."""
        self._plan: Mapping[str, Any] = compiled["public"]["plan"]
        self._percent: int = compiled["public"]["cut"]["percent"]
        self._keys: Mapping[str, Key] = compiled["private"]["keys"]
        self._outcomes = outcomes
        self._forms = QuickForms(self._plan)
        self._worth: dict[tuple[str, int], dict[str | None, _Worth]] = {}
        course, version, profile = (_literal(compiled[each]) for each in ("course", "version", "profile"))
        languages = "|".join(_literal(each) for each in compiled["languages"])
        self._middle = re.compile(
            rf'}},"avoid":\[\],"card":{{"id":{_TEXT},"name":{_TEXT},"workplace":{_TEXT}}},"course":{course},'
            rf'"digest":"{digest}","ended":{_STAMP},"form":\['
        ).match
        self._end = re.compile(
            rf'\],"format":{_literal(FORMAT)},"language":(?:{languages}),"profile":{profile},"seed":({_ID}),'
            rf'"shown":\[((?:{_ID}(?:,{_ID})*)?)\],"started":{_STAMP},"version":{version}}}\Z'
        ).match

    def result(self, data: bytes) -> Mapping[str, Any] | None:
        """The check's result (``result.check_result``), or None where the slower way has to decide."""
        if len(data) > canonical.SIZE_CAP or not self._forms.usable:
            return None
        try:
            text = data.decode()
        except UnicodeDecodeError:
            return None
        end = text.find(_MIDDLE, len(_BEGINS) - 1)
        if end < 0 or not text.startswith(_BEGINS):
            return None
        middle = self._middle(text, end)
        if middle is None:
            return None
        begin = middle.end()
        end_of_form = text.find(_END_OF_FORM, begin)
        last = self._end(text, end_of_form) if end_of_form >= 0 else None
        if last is None or not _are_times(last[3], middle[1]):
            return None
        drawn = self._forms.form(last[1][1:-1])
        if drawn is None or end_of_form - begin != len(drawn[0]) or not text.startswith(drawn[0], begin):
            return None
        form = drawn[1]
        if not _are_of(last[2], [question for question, _ in form]):
            return None
        return self._added_up(text[len(_BEGINS) : end], form)

    def _added_up(self, text: str, form: list[tuple[str, int]]) -> Mapping[str, Any] | None:
        found = _ANSWERS.findall(text)
        # With the quotes, the colon and the comma of each, what was found is all there is: nothing stood between.
        if found and sum([len(name) + len(value) for name, value in found]) + 4 * len(found) - 1 != len(text):
            return None
        given = dict(found)
        if (not found and text) or list(given) != sorted([name for name, _ in found]) or not text.isascii():
            return None
        marks: dict[str, int] = {}
        critical: list[str] = []
        for asked in form:
            value = given.pop(asked[0], None)
            known = self._worth.get(asked)
            if known is None:
                known = self._worth[asked] = {None: _worth(mark(self._keys[asked[0]], asked[1], None))}
            one = known.get(value)
            if one is None:
                one = self._worked_out(asked, value or "")
                if one is None:
                    return None
                if len(known) < _REMEMBERED:
                    known[value] = one
            marks[asked[0]] = one[0]
            if one[1]:
                critical.append(asked[0])
        # What is left over answers nothing that was asked.
        return None if given else self._result(marks, critical)

    def _result(self, marks: dict[str, int], critical: list[str]) -> Mapping[str, Any]:
        return with_marks(
            plan=self._plan, percent=self._percent, outcomes=self._outcomes, marks=marks, critical=critical
        )

    def _worked_out(self, asked: tuple[str, int], value: str) -> _Worth | None:
        """What an answer is worth, by its text; None where it is not canonical or none that the question can have."""
        try:
            answer = canonical.read(value.encode())
        except canonical.NotCanonical:
            return None
        one = mark(self._keys[asked[0]], asked[1], answer)
        return None if one.remarks.get("problem") == "malformed" else _worth(one)


def _worth(marked: Marked) -> _Worth:
    return marked.mark, ended_critically(marked)


def _literal(value: str) -> str:
    """An expression for the canonical text of a value."""
    return re.escape(canonical.write(value).decode())


def _are_times(started: str, ended: str) -> bool:
    """Whether both are times that there are, in this order; otherwise there is something to say."""
    try:
        return datetime.fromisoformat(started) <= datetime.fromisoformat(ended)
    except ValueError:
        return False


def _are_of(shown: str, asked: list[str]) -> bool:
    """Whether the texts between the brackets of ``shown`` are questions of the form, each at most once."""
    if not shown:
        return True
    names = shown[1:-1].split('","')
    return names == asked or (len(set(names)) == len(names) and set(names) <= set(asked))

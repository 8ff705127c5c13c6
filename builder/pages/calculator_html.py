"""A calculator as a sheet of the shop: lines with letters, filled in with the start values.

So it stands without scripts and in print as a worked example; ``view/calculator-view.js`` makes it take numbers.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from string import ascii_uppercase
from typing import Any

from markupsafe import Markup, escape

from journeybook.content.arithmetic import Expression, decimal_text, fraction_text, parse, round_half_away
from journeybook.content.calculations import Range, Working, working
from journeybook.content.model import BlockKind, Course, Lesson
from journeybook.content.model.calculators import Calculator, CalculatorInput, CalculatorResult
from journeybook.content.wording import Wording
from journeybook.pages.engine import render
from journeybook.pages.formula_html import MINUS, formula_html
from journeybook.pages.words_catalogue import load_catalogue

SCRIPT = "calculator"
"""The script that a page with a calculator loads besides."""
_POWER = re.compile(r"(?<=[a-z])([23])(?![0-9A-Za-z])")
_RAISED = {"2": "\N{SUPERSCRIPT TWO}", "3": "\N{SUPERSCRIPT THREE}"}


@dataclass(frozen=True, kw_only=True)
class InputLine:
    """A line to fill in."""

    id: str
    letter: str
    label: Markup
    start: str
    """What stands there at first, in words where it is one of some choices."""
    unit: str
    least: str
    most: str
    """Both empty where there are choices."""


@dataclass(frozen=True, kw_only=True)
class ResultLine:
    """A line that is worked out."""

    id: str
    letter: str
    label: Markup
    shown: str
    exact: bool
    unit: str
    formula: Markup
    worked: Markup
    """The formula with the start values in place of the letters, each in an element named by ``data-name``."""
    note: Markup


def unit_words(unit: str) -> str:
    """A unit as people write it: ``m3/h`` with a raised 3."""
    return _POWER.sub(lambda found: _RAISED[found[1]], unit)


def calculator_html(course: Course, wording: Wording, calculator_id: str, slug: str) -> Markup:
    """The sheet of one calculator; its ids begin with the leaf's ``slug``."""
    calculator = course.calculators[calculator_id]
    sheet = _Sheet(course, wording, calculator)
    return Markup(
        render(
            course.languages[0],
            "calculator.html",
            calculator=calculator,
            name=f"{slug}-calculator-{calculator.id}",
            slug=slug,
            inputs=[sheet.input_line(one) for one in calculator.inputs],
            results=[sheet.result_line(one) for one in calculator.results],
            course=course,
            wording=wording,
        )
    )


def calculator_data(course: Course, calculator_ids: Iterable[str]) -> dict[str, object]:
    """``{"calculators": {id: CalculatorData}}`` for a leaf's data (tests/js/types.d.ts); empty where there are none."""
    data = {
        name: script_data(course.calculators[name], _sheets(course), Wording(course))
        for name in dict.fromkeys(calculator_ids)
    }
    return {"calculators": data} if data else {}


def script_data(calculator: Calculator, sheets: Mapping[str, Any], wording: Wording) -> dict[str, object]:
    """What the script needs to work one calculator."""
    ready = working(calculator, sheets)
    letters = _letters(calculator)
    return {
        "inputs": [_input_data(one, ready.ranges[one.name], letters, wording) for one in calculator.inputs],
        "results": [
            {
                "id": one.id,
                "name": one.name,
                "letter": letters[one.name],
                "label": wording.plain(one.label),
                "unit": unit_words(one.unit),
                "places": one.places,
            }
            for one in calculator.results
        ],
        "programs": [[name, [list(step) for step in steps]] for name, steps in ready.programs],
    }


def calculators_of_lesson(lesson: Lesson) -> list[str]:
    """Ids of the calculators that a lesson shows."""
    return [block.text for block in lesson.body if block.kind is BlockKind.CALCULATOR]


def _sheets(course: Course) -> dict[str, Any]:
    return {"kit": course.kit.values, "profile": course.profile.values}


def _letters(calculator: Calculator) -> dict[str, str]:
    return {line.name: letter for line, letter in zip(calculator.lines, ascii_uppercase, strict=False)}


def _input_data(
    one: CalculatorInput, found: Range, letters: Mapping[str, str], wording: Wording
) -> dict[str, object]:
    data: dict[str, object] = {
        "id": one.id,
        "name": one.name,
        "letter": letters[one.name],
        "least": fraction_text(found.least),
        "most": fraction_text(found.most),
        "start": decimal_text(found.start),
        "places": one.places,
    }
    if one.choices:
        data["choices"] = [
            [decimal_text(value), wording.plain(preset.label)]
            for preset, value in zip(one.choices, found.choices, strict=True)
        ]
    return data


class _Sheet:
    """What the lines of one calculator have in common."""

    def __init__(self, course: Course, wording: Wording, calculator: Calculator) -> None:
        self.wording = wording
        self.letters = _letters(calculator)
        self.ready: Working = working(calculator, _sheets(course))
        self.found = self.ready.results(self.ready.starts)
        self.places = {one.name: one.places for one in calculator.results}
        self.say = load_catalogue(course.languages[0])[0].gettext

    def input_line(self, one: CalculatorInput) -> InputLine:
        found = self.ready.ranges[one.name]
        start = _written(found.start)
        for preset, value in zip(one.choices, found.choices, strict=False):
            if value == found.start:
                start = self.wording.plain(preset.label)
                break
        return InputLine(
            id=one.id,
            letter=self.letters[one.name],
            label=self._ink(one.label),
            start=start,
            unit=unit_words(one.unit),
            least="" if one.choices else _written(found.least),
            most="" if one.choices else _written(found.most),
        )

    def result_line(self, one: CalculatorResult) -> ResultLine:
        expression = parse(one.formula)
        value = self.found[one.name]
        assert isinstance(expression, Expression)
        assert isinstance(value, Fraction), "the cross-checks try the start"
        return ResultLine(
            id=one.id,
            letter=self.letters[one.name],
            label=self._ink(one.label),
            shown=_written(value, one.places),
            exact=value == round_half_away(value, one.places),
            unit=unit_words(one.unit),
            formula=formula_html(expression.postfix, self._letter, self.say),
            worked=formula_html(expression.postfix, self._number, self.say),
            note=self._ink(one.note),
        )

    def _ink(self, text: str) -> Markup:
        return Markup(self.wording.inline(text)) if text else Markup("")

    def _letter(self, name: str) -> Markup:
        if "." in name:
            return self._ink(f"{{{name}.number}}")
        return Markup('<b class="line-letter">{}</b>').format(self.letters[name])

    def _number(self, name: str) -> Markup:
        if "." in name:
            return self._ink(f"{{{name}.number}}")
        value = self.ready.starts.get(name, self.found.get(name))
        assert isinstance(value, Fraction)
        written = _written(value, self.places.get(name, 12))
        return Markup('<span data-name="{}">{}</span>').format(escape(name), written)


def _written(value: Fraction, places: int = 12) -> str:
    return decimal_text(value, places).replace("-", MINUS)

"""A calculator as the compiled course holds it: its words by language, its numbers and steps beside them."""

from __future__ import annotations

from journeybook.content.arithmetic import fraction_text
from journeybook.content.calculations import Range, working
from journeybook.content.model import Calculator, CalculatorInput, Course
from journeybook.marking.kind import Json
from journeybook.marking.question_texts import Say


def public_calculator(calculator: Calculator, course: Course, language: str, say: Say) -> dict[str, Json]:
    """Return all that is shown and worked out. Raises ValueError for one that the loader refuses with its line."""
    ready = working(calculator, {"kit": course.kit.values, "profile": course.profile.values})
    programs = dict(ready.programs)
    results: list[Json] = [
        {
            "id": one.id,
            "unit": one.unit,
            "places": one.places,
            "formula": one.formula,
            "steps": [list(step) for step in programs[one.name]],
        }
        for one in calculator.results
    ]
    return {
        "source": list(calculator.sources),
        "inputs": [_input(one, ready.ranges[one.name]) for one in calculator.inputs],
        "results": results,
        "texts": {
            language: {
                "title": say(calculator.title),
                "intro": say(calculator.intro),
                "caution": say(calculator.caution),
                "inputs": {
                    one.id: {
                        "label": say(one.label),
                        "choices": [say(preset.label) for preset in one.choices],
                    }
                    for one in calculator.inputs
                },
                "results": {
                    one.id: {"label": say(one.label), "note": say(one.note)} for one in calculator.results
                },
            }
        },
    }


def _input(one: CalculatorInput, found: Range) -> Json:
    return {
        "id": one.id,
        "unit": one.unit,
        "least": fraction_text(found.least),
        "most": fraction_text(found.most),
        "start": fraction_text(found.start),
        "places": one.places,
        "choices": [fraction_text(value) for value in found.choices],
    }

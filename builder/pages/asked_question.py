"""A question as it is asked at a sitting: without its answer, in no form.

The page that shows it cannot mark, so it gets neither key nor reasons. What it must know to let somebody answer is
``asked_facts``: in the members of a marking key, so that the same controls serve both, with all that tells right from
wrong left out or made equal.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from markupsafe import Markup

from journeybook.content.model import DrillQuestion, Question
from journeybook.marking.kind import Json, Key
from journeybook.pages.engine import engine
from journeybook.pages.question_html import LINK_TAG, SHEETS, Desk, _macros
from journeybook.pages.question_markup import options_control, section
from journeybook.pages.question_sheet import Line, QuestionSheet

_NEVER = {"low": "1", "high": "0"}
"""An interval that holds no number."""
OVER = ""
"""Where a deed leads that ends a drill at once; no moment has this id."""


def asked_html(desk: Desk, question: Question) -> Markup:
    """Return the section of one question without answer, reasons, sources and links."""
    sheet = _without_answer(SHEETS[question.kind](desk, question))
    if sheet.control == "options":
        control = options_control(sheet)
    else:
        control = _macros(engine(desk.language), f"question-{sheet.control}.html").control(sheet)
    told = _told(desk, question) if isinstance(question, DrillQuestion) else ""
    html = section(sheet, "", replace(desk.words, answer_and_reasons=""), control=control, answer=told)
    return Markup(
        LINK_TAG.sub("", html).replace('<details class="answer">', '<details class="answer" hidden>')
    )


def _without_answer(sheet: QuestionSheet) -> QuestionSheet:
    """The order in which an author wrote things may say which is right, so they stand in that of the alphabet."""
    drill = sheet.drill
    if drill is not None:
        moments = tuple(
            replace(moment, deeds=tuple(replace(deed, goes_on_at=0, told="") for deed in moment.deeds))
            for moment in drill.moments
        )
        drill = replace(drill, moments=moments, last_number=0)
    return replace(
        sheet,
        options=tuple(
            sorted((line._replace(reason="", right=False) for line in sheet.options), key=_by_words)
        ),
        sorted_units=tuple(
            sorted(
                (replace(unit, place_text="", reason="", dangerous=False) for unit in sheet.sorted_units),
                key=lambda unit: Markup(unit.text).striptags().casefold(),
            )
        ),
        items=tuple(replace(item, answer_text="", reason="") for item in sheet.items),
        answers=tuple(line._replace(reason="") for line in sheet.answers),
        whys=(),
        sources=(),
        one_order=(),
        rules=(),
        spare_answers=(),
        rights=(),
        slips=(),
        settings=(),
        drill=drill,
    )


def _by_words(line: Line) -> str:
    return Markup(line.text).striptags().casefold()


def _told(desk: Desk, question: DrillQuestion) -> str:
    """What follows each deed after which the drill goes on; what an end is worth is not said here."""
    drill = desk.course.drills[question.drill]
    ends = {moment.id for moment in drill.moments if moment.is_end}
    rows = [
        f'<li data-deed="{deed.id}"><span class="reason">{desk.wording.inline(deed.told)}</span></li>'
        for deed in drill.deeds
        if deed.told and not deed.critical and deed.leads_to not in ends
    ]
    return f"<ul>{''.join(sorted(rows))}</ul>" if rows else ""


def asked_facts(key: Key) -> dict[str, Json]:
    """Return what the controls must know of a question, from its marking key."""
    found: dict[str, Any] = {"kind": key["kind"]}
    match key["kind"]:
        case "choice" | "choices":
            found["options"] = sorted(key["options"])
        case "number":
            found |= {
                # Whether a number can be read is told while somebody types; whether it is right is not known here.
                "unit-needed": key["unit-needed"],
                "units": dict.fromkeys(sorted(key["units"]), "1"),
                "variants": [_NEVER for _ in key["variants"]],
            }
        case "drill":
            found |= {
                "start": key["start"],
                "deeds": sorted(key["deeds"]),
                "moments": {
                    moment: {deed: _led(done) for deed, done in deeds.items()}
                    for moment, deeds in key["moments"].items()
                },
                "ends": dict.fromkeys(sorted(key["ends"]), 0),
            }
    return found


def _led(done: Mapping[str, Any]) -> dict[str, Json]:
    return {"to": done.get("to", OVER), "penalty": 0}

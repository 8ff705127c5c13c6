"""Turns each kind of question into what paper asks. One function a kind; ``ASKED`` says which serves which.

Letters count what the form drew, in its order; items of a match stand in the author's order and units of a triage in
the drawn one, as ``sittings.paper_answers`` reads them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from journeybook.content.model import (
    DrillQuestion,
    MatchQuestion,
    NumberQuestion,
    Question,
    SettingQuestion,
    SpotQuestion,
    TriageQuestion,
)
from journeybook.marking.answer_letters import letters
from journeybook.pages.question_figure import figure_of
from journeybook.pages.words_catalogue import to_translate as _
from journeybook.paper.asked import Marked, PaperQuestion
from journeybook.paper.asked_bench import bench_table, controls_of
from journeybook.paper.asked_drill import drill_rows
from journeybook.paper.asked_spot import spot_picture
from journeybook.paper.imprint import CourseInPrint
from journeybook.paper.plain_picture import Picture, picture_of
from journeybook.paper.rich_text import blocks_of, runs_of

HOW_TO_ANSWER = {
    "choice": _("Choose one letter."),
    "choices": _("Choose every letter that is right."),
    "order": _("Put the steps in order: write all the letters, the first step first."),
    "match": _("Write for each number the letter that goes with it. Each letter serves once; some may be left over."),
    "number": _("Write the number, without a mark for thousands."),
    "spot": _("Find it in the drawing and choose its letter."),
    "drill": _(
        "Choose what you do and write its letter. Then turn to the row that stands beside it, near the end of this "
        "paper, and go on there. Read no other row."
    ),
    "triage": _("Write for each number the letter of the place where it belongs. A letter may serve more than once."),
    "setting": _("Find the row of the table that does what is asked. Write for each control the number of its place."),
}  # fmt: skip
"""What to do on paper, by kind; English source texts, translated when printed."""
_NUMBER_AND_UNIT = _("Write the number, without a mark for thousands, and its unit.")


@dataclass(frozen=True, kw_only=True)
class Drawn:
    """One line of the form, and what is needed to print it."""

    printed: CourseInPrint
    seed: str
    number: str
    """``q1`` …"""
    variant: int
    options: Sequence[str]
    """Ids in the drawn order."""


def asked_on_paper(
    printed: CourseInPrint, seed: str, form: Sequence[Mapping[str, Any]]
) -> list[PaperQuestion]:
    """Return the questions of a form, as ``marking.draw.draw_form`` gives it, in its order."""
    found = []
    for place, line in enumerate(form, 1):
        question = printed.course.questions[line["q"]]
        drawn = Drawn(
            printed=printed,
            seed=seed,
            number=f"q{place}",
            variant=line["variant"],
            options=line["options"],
        )
        found.append(ASKED[question.kind](drawn, question))
    return found


def _whole(drawn: Drawn, question: Question) -> PaperQuestion:
    """What every kind has."""
    printed = drawn.printed
    figure = figure_of(printed.course, question)
    return PaperQuestion(
        number=drawn.number,
        kind=question.kind,
        todo=printed.say(HOW_TO_ANSWER[question.kind]),
        ask=blocks_of(printed.wording, question.ask, question.rows[drawn.variant]),
        picture=_picture(drawn, figure) if figure else None,
        bench=bench_table(printed, question.trial, numbered=question.kind == "setting")
        if question.trial
        else None,
        lettered=[],
        numbered=[],
        drill=[],
        situation=[],
        units=[],
        controls=[],
    )


def _picture(drawn: Drawn, figure: str) -> Picture:
    return picture_of(drawn.printed.course.figures[figure], drawn.printed.wording)


def _lettered(drawn: Drawn, texts: Mapping[str, str], order: Sequence[str]) -> list[Marked]:
    wording = drawn.printed.wording
    return [
        Marked(mark=mark, runs=runs_of(wording, texts[name]))
        for name, mark in zip(order, letters(len(order)), strict=True)
    ]


def _offered(drawn: Drawn, question: Question) -> PaperQuestion:
    """Choice, choices and order: what is offered gets letters."""
    texts = {option.id: option.text for option in question.offered}
    return replace(_whole(drawn, question), lettered=_lettered(drawn, texts, drawn.options))


def _match(drawn: Drawn, question: MatchQuestion) -> PaperQuestion:
    wording = drawn.printed.wording
    numbered = [
        Marked(mark=str(number), runs=runs_of(wording, item.text))
        for number, item in enumerate(question.items, 1)
    ]
    return replace(_offered(drawn, question), numbered=numbered)


def _triage(drawn: Drawn, question: TriageQuestion) -> PaperQuestion:
    wording = drawn.printed.wording
    units = {unit.id: unit for unit in question.units}
    numbered = [
        Marked(
            mark=str(number),
            runs=runs_of(wording, units[name].text),
            picture=_picture(drawn, units[name].figure) if units[name].figure else None,
        )
        for number, name in enumerate(drawn.options, 1)
    ]
    places = {place.id: place.text for place in question.places}
    lettered = _lettered(drawn, places, [*places])
    return replace(_whole(drawn, question), lettered=lettered, numbered=numbered)


def _number(drawn: Drawn, question: NumberQuestion) -> PaperQuestion:
    units = sorted({unit for unit in (question.unit, *question.units) if unit}, key=str.casefold)
    choose = bool(units) and (question.unit_needed or len(units) > 1)
    whole = _whole(drawn, question)
    todo = drawn.printed.say(_NUMBER_AND_UNIT) if choose else whole.todo
    return replace(whole, units=units, choose_unit=choose, todo=todo)


def _spot(drawn: Drawn, question: SpotQuestion) -> PaperQuestion:
    figure = drawn.printed.course.figures[question.figure]
    marks = letters(len(drawn.options))
    picture = spot_picture(question, figure, drawn.printed.wording, drawn.options, marks, drawn.number)
    return replace(_offered(drawn, question), picture=picture)


def _drill(drawn: Drawn, question: DrillQuestion) -> PaperQuestion:
    printed = drawn.printed
    drill = printed.course.drills[question.drill]
    return replace(
        _whole(drawn, question),
        drill=drill_rows(printed, drill, drawn.options, drawn.seed),
        drill_title=printed.wording.plain(drill.title),
        situation=blocks_of(printed.wording, drill.situation),
        steps=sum(not moment.is_end for moment in drill.moments),
    )


def _setting(drawn: Drawn, question: SettingQuestion) -> PaperQuestion:
    controls = controls_of(drawn.printed, question.trial) if question.trial else []
    return replace(_whole(drawn, question), controls=controls)


ASKED: dict[str, Callable[[Drawn, Any], PaperQuestion]] = {
    "choice": _offered,
    "choices": _offered,
    "order": _offered,
    "match": _match,
    "number": _number,
    "spot": _spot,
    "drill": _drill,
    "triage": _triage,
    "setting": _setting,
}
"""Which function serves which kind."""

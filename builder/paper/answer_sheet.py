"""The answer sheet of one form: for each question the boxes that its kind fills, as ``from-paper`` has them keyed in.

Letters that are chosen are crossed; what has an order, or goes with a number, is written into boxes. The sheet says
nothing of the questions, so it may lie on a desk and be sorted by anybody.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from journeybook.marking.answer_letters import letters
from journeybook.paper.asked import PaperQuestion
from journeybook.paper.code_picture import code_picture
from journeybook.paper.form_on_paper import TYPES, FormOnPaper
from journeybook.paper.press import SIZES, press


@dataclass(frozen=True, kw_only=True)
class AnswerRow:
    """The boxes of one question."""

    number: str
    """``q1`` …"""
    way: str
    """``cross``: one of the letters; ``crosses``: any of them; ``write``: a letter in each box; ``number``;
    ``places``: a number in each box."""
    marks: list[str]
    """The letters to cross; beside each box to write in, what stands there: 1, 2 … or a control with its places."""
    units: list[str]
    """Of a number: one to be crossed, or the only one there is."""
    choose_unit: bool = False

    def as_data(self) -> dict[str, Any]:
        """What the template reads."""
        return {
            "number": self.number,
            "way": self.way,
            "marks": self.marks,
            "units": self.units,
            "choose-unit": self.choose_unit,
        }


def answer_row(question: PaperQuestion) -> AnswerRow:
    """The boxes for a question."""
    way, marks = "write", _counted(max(len(question.numbered), question.steps))
    match question.kind:
        case "choice" | "spot":
            way, marks = "cross", letters(len(question.lettered))
        case "choices":
            way, marks = "crosses", letters(len(question.lettered))
        case "order":
            marks = _counted(len(question.lettered))
        case "number":
            way, marks = "number", []
        case "setting":
            way, marks = "places", [f"{label}, 1–{places}" for label, places in question.controls]
    return AnswerRow(
        number=question.number,
        way=way,
        marks=marks,
        units=question.units,
        choose_unit=question.choose_unit,
    )


def _counted(count: int) -> list[str]:
    return [str(number) for number in range(1, count + 1)]


def answer_sheet_data(
    form: FormOnPaper, *, paper: str = SIZES[0], type_size: str = TYPES[0]
) -> dict[str, Any]:
    """What the template reads, but for the picture of the code."""
    say = form.printed.say
    return form.head() | {
        "title": say("Answer sheet"),
        "paper": paper,
        "large": type_size == "large",
        "rows": [answer_row(question).as_data() for question in form.questions],
        "how": [
            say("Cross a box; write one letter or number in each open box."),
            say("To change a cross, fill that box and cross another."),
            say("To change what is written, strike it out and write beside it."),
        ],
        "words": {
            "ticket": say("Ticket"),
            "form": say("Form"),
            "page": say("Page"),
            "code": say("The ticket as a code"),
            "any": say("any"),
            "begun": say("Begun at"),
            "ended": say("Ended at"),
            "person": say("Signature of the person"),
            "assessor": say("Signature of the assessor"),
            "keyed": say("Keyed in by, on"),
        },
    }  # fmt: skip


def answer_sheet_pdf(form: FormOnPaper, *, paper: str = SIZES[0], type_size: str = TYPES[0]) -> bytes:
    """Return the PDF. Raises NoPress, NotSet."""
    data = answer_sheet_data(form, paper=paper, type_size=type_size)
    return press("answer-sheet", data, made=form.made, pictures={"ticket.svg": code_picture(form.ticket).svg})

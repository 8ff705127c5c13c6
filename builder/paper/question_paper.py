"""The question paper of one form: what the page of a sitting would ask, to be answered with a pen.

It holds no key, no reason and no id: ``asked`` has none of them.
"""

from __future__ import annotations

from typing import Any

from journeybook.paper.form_on_paper import TYPES, FormOnPaper
from journeybook.paper.imprint import cautions_of
from journeybook.paper.press import SIZES, press


def question_paper_data(
    form: FormOnPaper, *, paper: str = SIZES[0], type_size: str = TYPES[0]
) -> dict[str, Any]:
    """What the template reads."""
    say = form.printed.say
    return form.head() | {
        "title": say("Questions"),
        "paper": paper,
        "large": type_size == "large",
        "questions": [question.as_data() for question in form.questions],
        "cautions": cautions_of(form.printed),
        "words": {
            "ticket": say("Ticket"),
            "form": say("Form"),
            "page": say("Page"),
            "example-values": say("example values"),
            "begin": say("Begin here"),
            "row": say("row"),
            "rows-of": say("Rows of"),
            "rows-say": say("Read a row only when the one before sends you to it."),
            "read-on": say("Go on at row"),
            "ends": say("Here it ends. Write no more letters."),
            "end": say("End of the questions"),
        },
        "how": [
            say("Write on the answer sheet that has the same ticket. Nothing written here is marked."),
            say("Ask when words are unclear. Nobody says what is right before the papers are handed in."),
        ],
    }


def question_paper_pdf(form: FormOnPaper, *, paper: str = SIZES[0], type_size: str = TYPES[0]) -> bytes:
    """Return the PDF. Raises NoPress, NotSet."""
    pictures: dict[str, bytes] = {}
    for question in form.questions:
        pictures |= question.pictures()
    data = question_paper_data(form, paper=paper, type_size=type_size)
    return press("question-paper", data, made=form.made, pictures=pictures)

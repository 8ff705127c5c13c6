"""Somebody with a pen who knows what is right and sees nothing but the printed paper.

What is right is known by its words; the letter for it is looked up on the paper, as a person would.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any

from journeybook.content.model import Course, Drill, Question
from journeybook.content.wording import Wording
from journeybook.pages.number_words import decimal_words
from journeybook.pages.question_html import one_order
from journeybook.paper.asked import DrillRow, Marked, PaperQuestion


def words(runs: Iterable[Mapping[str, Any]]) -> str:
    """What a reader reads of a line."""
    return "".join(" " if "break" in run else run["text"] for run in runs)


class Pen:
    """Answers a course's questions."""

    def __init__(self, course: Course) -> None:
        self.course = course
        self.say = Wording(course).plain

    def right(self, question: Question, paper: PaperQuestion, key: Mapping[str, Any], variant: int) -> str:
        """What belongs on the answer sheet, in letters and numbers as the paper prints them."""
        answer: str = getattr(self, f"_{question.kind}")(question, paper, key, variant)
        return answer

    def letter(self, lines: Iterable[Marked], text: str) -> str:
        """The letter that is printed before a text."""
        wanted = self.say(text)
        (mark,) = [line.mark for line in lines if words(line.runs) == wanted]
        return mark

    def _choice(self, question: Any, paper: PaperQuestion, *_: Any) -> str:
        (text,) = [option.text for option in question.offered if option.id == question.right]
        return self.letter(paper.lettered, text)

    _spot = _choice

    def _choices(self, question: Any, paper: PaperQuestion, *_: Any) -> str:
        right = [option.text for option in question.options if option.id in question.right]
        return " ".join(self.letter(paper.lettered, text) for text in right)

    def _order(self, question: Any, paper: PaperQuestion, *_: Any) -> str:
        texts = {step.id: step.text for step in question.steps}
        return " ".join(self.letter(paper.lettered, texts[step]) for step in one_order(question))

    def _match(self, question: Any, paper: PaperQuestion, *_: Any) -> str:
        answers = {answer.id: answer.text for answer in question.answers}
        partners = {self.say(item.text): answers[item.goes_with] for item in question.items}
        return " ".join(self.letter(paper.lettered, partners[words(line.runs)]) for line in paper.numbered)

    def _triage(self, question: Any, paper: PaperQuestion, *_: Any) -> str:
        places = {place.id: place.text for place in question.places}
        belongs = {self.say(unit.text): places[unit.belongs] for unit in question.units}
        return " ".join(self.letter(paper.lettered, belongs[words(line.runs)]) for line in paper.numbered)

    def _number(self, question: Any, _: PaperQuestion, key: Mapping[str, Any], variant: int) -> str:
        interval = key["variants"][variant]
        middle = (Fraction(interval["low"]) + Fraction(interval["high"])) / 2
        number = decimal_words(middle)
        # Three decimals could be thousands: whoever keys them in is told to add a 0.
        number += "0" if re.fullmatch(r"[1-9][0-9]{0,2}\.[0-9]{3}", number) else ""
        return f"{number} {question.unit}".strip()

    def _setting(self, _: Any, paper: PaperQuestion, key: Mapping[str, Any], __: int) -> str:
        assert paper.bench is not None
        accepted = {tuple(places) for places in key["accepted"]}
        count = len(paper.controls)
        for row in paper.bench.rows:
            numbers = [cell.split(" · ")[0] for cell in row[:count]]
            if tuple(int(number) - 1 for number in numbers) in accepted:
                return " ".join(numbers)
        raise AssertionError("no row of the table is right")

    def _drill(self, question: Any, paper: PaperQuestion, *_: Any) -> str:
        drill = self.course.drills[question.drill]
        rows = {row.number: row for row in paper.drill}
        here, done = rows[0], list[str]()
        while here.deeds:
            mark, number = self._next(drill, here)
            done.append(mark)
            here = rows[number]
            here = rows[here.read_on] if here.read_on else here
        return " ".join(done)

    def _next(self, drill: Drill, row: DrillRow) -> tuple[str, int]:
        """The letter of a deed that is right there, and the row that it sends to."""
        safe = {moment.id for moment in drill.moments if moment.worth == 1000}
        for _ in drill.moments:
            safe |= {
                moment.id
                for moment in drill.moments
                if any(deed.leads_to in safe and not deed.penalty for deed in moment.deeds)
            }
        right = {self.say(deed.text) for deed in drill.deeds if deed.leads_to in safe and not deed.penalty}
        deed = next(deed for deed in row.deeds if words(deed.runs) in right)
        return deed.mark, deed.row

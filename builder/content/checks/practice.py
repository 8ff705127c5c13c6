"""What lessons practise with: questions that are there, are for practice, and are still asked."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.gathered import Gathered, Naming
from journeybook.content.model import Lesson, Question, Use
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem


def check_practice(got: Gathered) -> Iterator[Problem]:
    """Each id in a lesson's ``practice`` names a practice question that is not retired, once."""
    questions = {question.id: question for question in got.every(Question)}
    names = got.names[Naming.QUESTION]
    for lesson in got.every(Lesson):
        for index, name in enumerate(lesson.practice):
            place = got.place(lesson, "practice", index)
            question = questions.get(name)
            if names.lacks(name):
                yield fault(
                    "L001",
                    place,
                    f"There is no question called `{name}`.",
                    f"{names.hint(name)} `{name}` to a bank.",
                )
            elif question is not None and question.use is Use.CHECK:
                yield fault(
                    "L002",
                    place,
                    f"`{name}` is a question of the check; practice would give it away.",
                    "Name a question with `use: practice`.",
                    (got.place(question, "use"),),
                )
            elif question is not None and question.retired is not None:
                yield fault(
                    "L005",
                    place,
                    f"`{name}` is retired since {question.retired.isoformat()} and no longer asked.",
                    "Take it out of `practice`, or name the question that follows it.",
                    (got.place(question, "retired"),),
                )
            elif name in lesson.practice[:index]:
                yield fault(
                    "C016", place, f"The lesson practises with `{name}` twice.", "Take one of the two out."
                )

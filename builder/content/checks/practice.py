"""What lessons practise with: questions that are there, are for practice, and are still asked."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.file_read import FileRead
from journeybook.content.gathered import Gathered, Naming
from journeybook.content.model import Lesson, Question, Use
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem


def check_practice(got: Gathered) -> Iterator[Problem]:
    """Each id in a lesson's ``practice`` names a practice question that is not retired, once."""
    read = [file.worked_out(_fit_and_unfit, None) for file in got.files]
    fit = set[str]().union(*[fit for fit, _ in read]).difference(*[unfit for _, unfit in read])
    for lesson in got.every(Lesson):
        # The rule is that there is nothing to say, which is soon seen.
        if not fit.issuperset(lesson.practice) or len(set(lesson.practice)) < len(lesson.practice):
            yield from _check_lesson(got, lesson)


def _fit_and_unfit(file: FileRead, _: None) -> tuple[list[str], list[str]]:
    """Ids of the file's questions that a lesson may practise with, and of the others."""
    fit: list[str] = []
    unfit: list[str] = []
    for one in file.every(Question):
        (fit if one.use is Use.PRACTICE and one.retired is None else unfit).append(one.id)
    return fit, unfit


def _check_lesson(got: Gathered, lesson: Lesson) -> Iterator[Problem]:
    names, questions = got.names[Naming.QUESTION], got.questions
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

"""The practice at the end of a lesson: its questions as HTML, and the data that mark them in the browser."""

from __future__ import annotations

from collections.abc import Iterable

from journeybook.content.model import BlockKind, Course, Lesson, Question
from journeybook.content.wording import Wording
from journeybook.marking.draw import keeps_order, shape
from journeybook.marking.keys import lower
from journeybook.pages.practice_figure import PracticeFigures
from journeybook.pages.question_html import Desk, question_html
from journeybook.pages.words_catalogue import load_catalogue


def practice_figures(course: Course, wording: Wording, lesson: Lesson, slug: str) -> PracticeFigures:
    """Return what shows the drawings of a lesson's practice; ``slug`` is the lesson leaf's slug."""
    return PracticeFigures(
        course,
        wording,
        slug,
        load_catalogue(course.languages[0])[0].gettext,
        above=(block.text for block in lesson.body if block.kind is BlockKind.FIGURE),
        questions=practice_questions(course, lesson),
    )


def practice_html(course: Course, wording: Wording, lesson: Lesson, slug: str) -> str:
    """Return the sections of a lesson's practice questions, or nothing where it has no practice.

    ``slug`` is the lesson leaf's slug. Everything can be read with scripts off; each question then has its
    answer and reasons in a ``details`` element.
    """
    questions = practice_questions(course, lesson)
    if not questions:
        return ""
    language = course.languages[0]
    desk = Desk(
        course=course,
        wording=wording,
        slug=slug,
        figure_html=practice_figures(course, wording, lesson, slug),
        language=language,
    )
    heading = desk.say("Practice · question {number} of {total}")
    sections = [
        question_html(desk, question, heading.format(number=number, total=len(questions)))
        for number, question in enumerate(questions, 1)
    ]
    return "\n".join(sections)


def practice_data(course: Course, lesson: Lesson) -> dict[str, object]:
    """Return what the script needs to mark the practice.

    ``{"practice": {question id: {"key": marking key, "shape": how it is drawn}}}``; see marking.keys and
    marking.draw. Practice is never scored, so a critical question is marked as it would be in a check.
    """
    return {"practice": marking_data(course, practice_questions(course, lesson))}


def marking_data(course: Course, questions: Iterable[Question]) -> dict[str, object]:
    """Return ``{question id: {"key", "shape"}}``."""
    data: dict[str, object] = {}
    for question in questions:
        key = lower(question, course)
        data[question.id] = {"key": key, "shape": shape(key, keeps_order(question))}
    return data


def practice_questions(course: Course, lesson: Lesson) -> list[Question]:
    """The questions that a lesson practises with, in its order."""
    known = course.questions
    return [known[id] for id in lesson.practice if id in known]

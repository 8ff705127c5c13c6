"""The open check as one leaf: what it is, every question it may draw, and the certificate it may end in.

The check runs in the browser: the leaf holds the plan, the marking keys and the questions as templates, so
whoever holds the page can read the answers. That is why everything it leads to says *self-recorded*.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from journeybook.content.model import Course, Lesson
from journeybook.content.wording import Wording
from journeybook.marking.compiled import Compiled
from journeybook.marking.draw import questions_in_a_form
from journeybook.pages.bench_html import SCRIPT, benches_of_questions
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.question_drill import drill_scripts
from journeybook.pages.question_figure import QuestionFigures
from journeybook.pages.question_html import Desk, question_html
from journeybook.pages.route_card import check_operation

SLUG = "check"


@dataclass(frozen=True, kw_only=True)
class FactLine:
    """A critical fact as shown."""

    id: str
    text: Markup


@dataclass(frozen=True, kw_only=True)
class OutcomeLine:
    """An outcome, and the lessons to go back to for it."""

    id: str
    text: Markup
    lessons: tuple[Lesson, ...]


@dataclass(frozen=True, kw_only=True)
class QuestionPart:
    """One question of the check as a template."""

    id: str
    html: Markup


def check_leaf(course: Course, wording: Wording, facts: BuildFacts, compiled: Compiled) -> Leaf:
    """Return the leaf of the course's check. Raises ValueError for a course without one.

    Plan and keys are taken from ``compiled``, so that the browser draws and marks by the very data that the
    digest covers.
    """
    if course.check is None:
        raise ValueError(f"course {course.id} has no check")
    language = course.languages[0]
    content: dict[str, Any] = dict(compiled.content)
    keys, drawing = content["private"]["keys"], content["public"]["plan"]
    asked = [question for id, question in course.questions.items() if id in drawing["questions"]]
    figures = QuestionFigures(course, wording, SLUG)
    desk = Desk(
        course=course,
        wording=wording,
        slug=SLUG,
        figure_html=figures,
        language=language,
    )
    benches = benches_of_questions(asked)
    cautions = [Markup(wording.inline(caution)) for caution in course.cautions]
    limits = [Markup(wording.inline(limit)) for limit in course.certificate_limits]
    outcomes = _outcomes(course, wording)
    sections = [QuestionPart(id=question.id, html=question_html(desk, question)) for question in asked]
    body = render(
        language,
        "check.html",
        course=course,
        wording=wording,
        check=course.check,
        slug=SLUG,
        operation=check_operation(course),
        count=questions_in_a_form(drawing),
        grounds=Markup(wording.block(course.check.grounds)),
        facts=[
            FactLine(id=fact.id, text=Markup(wording.inline(fact.text))) for fact in course.critical_facts
        ],
        outcomes=outcomes,
        sections=sections,
        drawings=figures.store(),
        has_drills=bool(drill_scripts(asked)),
        cautions=cautions,
        limits=limits,
        release=facts,
    )
    return Leaf(
        path=f"{course.id}/check.html",
        slug=SLUG,
        kind="check",
        title=wording.plain(course.check.title),
        course=course.id,
        body=body,
        data={
            "check": {
                "course": course.id,
                "version": facts.version,
                "digest": compiled.digest,
                "profile": course.profile.id,
                "language": language,
                "percent": course.check.percent,
                "months": course.validity.months,
                "plan": drawing,
                "keys": {question.id: keys[question.id] for question in asked},
                "outcomes": {question.id: question.outcome for question in asked},
            }
        },
        language=language,
        operation=check_operation(course),
        scripts=((SCRIPT,) if benches else ()) + drill_scripts(asked),
    )


def _outcomes(course: Course, wording: Wording) -> list[OutcomeLine]:
    return [
        OutcomeLine(
            id=outcome.id,
            text=Markup(wording.inline(outcome.text)),
            lessons=tuple(lesson for lesson in course.lessons if outcome.id in lesson.outcomes),
        )
        for outcome in course.outcomes
    ]

"""Sittings whose papers are tested: the demo course, and the second course, whose trade is another."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

from paper_checks import badly_placed
from paper_demo import COURSE as DEMO

from journeybook.content.loader import load_courses
from journeybook.content.model import Course, Use
from journeybook.marking.compiled import Compiled, compile_course
from journeybook.paper.form_on_paper import FormOnPaper
from journeybook.paper.imprint import CourseInPrint
from journeybook.sittings.papers import form_on_paper
from journeybook.sittings.sitting import ALPHABET, Assessor, Place, Sitting

BASE = Path(__file__).parents[2] / "faults" / "base"
TICKETS = [f"ABCDE-FGH{one}{two}" for one in ALPHABET[:3] for two in ALPHABET[:3]]


def misplaced(pdf: bytes) -> list[str]:
    """Letters beyond the paper's edge or on another one; a full stop may stand under the arm of an r or a w."""
    return [said for said in badly_placed(pdf) if not said.endswith((" on '.'", " on ','"))]


@dataclass(frozen=True, kw_only=True)
class Sat:
    """A sitting with its course."""

    course: Course
    compiled: Compiled
    sitting: Sitting

    @property
    def content(self) -> Any:
        return self.compiled.content

    @property
    def keys(self) -> Any:
        return self.content["private"]["keys"]

    def form(self, number: int = 0, **changes: Any) -> FormOnPaper:
        printed = CourseInPrint(course=self.course, digest=self.compiled.digest)
        made = form_on_paper(self.sitting, self.sitting.people[number], printed, self.content)
        return replace(made, **changes)


def sat(course: Course, *people: Place) -> Sat:
    course = replace(course, draft=False)
    compiled = compile_course(course)
    return Sat(
        course=course,
        compiled=compiled,
        sitting=Sitting(
            id="3f0e6c1e-6f0a-4c1c-9a3f-0c6e5b8f2a11",
            course=course.id,
            version=course.version,
            digest=compiled.digest,
            profile=course.profile.id,
            language="en",
            title="Wednesday class",
            held_on=date(2026, 12, 2),
            location="Training room 2",
            assessor=Assessor(name="T. Marrable", basis="Foreman"),
            identity="Works pass",
            trainer="A. Fenwright",
            trained=date(2026, 12, 1),
            minutes=45,
            made="2026-11-30T08:00:00Z",
            passphrase="guard mango river stone ladder zebra",
            people=people
            or tuple(
                Place(ticket=ticket, id=f"04{number:02d}", name=f"Robin Ashdown {number}", workplace="Bay 3")
                for number, ticket in enumerate(TICKETS)
            ),
        ),
    )


@cache
def demo() -> Sat:
    return sat(DEMO)


@cache
def second() -> Sat:
    """The second course with every question of every kind in its check: each form has them all."""
    (course,), _ = load_courses(
        BASE,
        ("pillar-drill",),
        profile="uk",
        courses_dir="course_src",
        quizzes_dir="quizzes",
        today=date(2026, 11, 27),
    )
    assert course.check is not None
    questions = {
        id: replace(question, use=Use.CHECK, critical="") for id, question in course.questions.items()
    }
    wanted = {(question.outcome, question.level) for question in questions.values()}
    cell = course.check.cells[0]
    cells = tuple(
        replace(
            cell,
            outcome=outcome,
            level=level,
            draw=sum((each.outcome, each.level) == (outcome, level) for each in questions.values()),
        )
        for outcome, level in sorted(wanted)
    )
    banks = tuple(
        replace(bank, questions=tuple(questions[each.id] for each in bank.questions if each.id in questions))
        for bank in course.banks
    )
    return sat(replace(course, banks=banks, critical_facts=(), check=replace(course.check, cells=cells)))

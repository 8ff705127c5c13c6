"""A010: nobody goes through a drill wholly right by luck too often.

The chance is exact: every deed equally likely, every way followed (``marking.drill_chances``). A quarter is what a
question with four options gives away; the rule is ours.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import partial

from journeybook.audit.audit_memo import AuditMemo
from journeybook.content.model import Course, Drill, DrillQuestion
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem
from journeybook.marking.drill_chances import chances
from journeybook.marking.keys import lower

MOST = Fraction(1, 4)
"""Of full marks, for somebody who guesses."""


def find_guessable_drills(course: Course, memo: AuditMemo | None = None) -> Iterator[Problem]:
    """Drills that a question leads through and that are too often right by guessing; each once."""
    memo = memo or AuditMemo()
    asked = {
        question.drill: question
        for question in course.questions.values()
        if isinstance(question, DrillQuestion) and question.retired is None
    }
    for name, question in asked.items():
        drill = course.drills[name]
        yield from memo.same(("drill", name), (drill, question), partial(_in_drill, drill, question, course))


def _in_drill(drill: Drill, question: DrillQuestion, course: Course) -> Sequence[Problem]:
    full = chances(lower(question, course)).full
    if full <= MOST:
        return ()
    return (
        warning(
            "A010",
            drill.place,
            f"Who takes every deed by chance ends the drill {drill.id} with full marks {full} of the time.",
            f"Add moments, or deeds that look right and are not, until it is {MOST} at most.",
        ),
    )

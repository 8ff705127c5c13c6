"""What each question and lesson owes: its sources, and a reason for everything that can be got wrong."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.gathered import Gathered
from journeybook.content.model import (
    ChoiceQuestion,
    ChoicesQuestion,
    CriticalFact,
    Lesson,
    MatchQuestion,
    NumberQuestion,
    OrderQuestion,
    Question,
)
from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Place, Problem


def check_grounds(got: Gathered) -> Iterator[Problem]:
    """Missing sources and reasons: faults, or warnings while the course, lesson or question is a draft."""
    for fact in got.every(CriticalFact):
        if not fact.sources:
            yield _owed(
                got.draft,
                "C030",
                got.place(fact),
                f"The critical fact {fact.id} names no source.",
                _ADD_SOURCE,
            )
    for lesson in got.every(Lesson):
        if not lesson.sources:
            yield _owed(
                got.draft or lesson.draft,
                "C030",
                got.place(lesson),
                "The lesson names no source.",
                _ADD_SOURCE,
            )
        if not lesson.body:
            yield fault(
                "L004",
                got.place(lesson, "body"),
                "The lesson has no body.",
                "Add at least one block, such as `- text: …`.",
            )
    for question in got.every(Question):
        draft = got.draft or question.draft
        if not question.sources:
            yield _owed(draft, "C030", got.place(question), "The question names no source.", _ADD_SOURCE)
        yield from _reasons(got, question, draft)


_ADD_SOURCE = "Add `source:` with an id of sources.yml, or `kit` for the kit sheet."


def _owed(draft: bool, code: str, place: Place, message: str, mend: str) -> Problem:
    return (warning if draft else fault)(code, place, message, mend)


def _reasons(got: Gathered, question: Question, draft: bool) -> Iterator[Problem]:
    match question:
        case ChoiceQuestion() | ChoicesQuestion():
            right = {question.right} if isinstance(question, ChoiceQuestion) else set(question.right)
            if not right <= {option.id for option in question.options}:
                return  # Which options are wrong is not known until ``right`` is mended.
            for option in question.options:
                if option.id not in right and not option.reason:
                    yield _owed(
                        draft,
                        "Q013",
                        got.place(option),
                        f"The wrong option `{option.id}` has no reason.",
                        "Add `reason:`, what someone who picks it has not understood.",
                    )
        case OrderQuestion():
            for rule in question.rules:
                if not rule.reason:
                    yield _owed(
                        draft,
                        "Q024",
                        got.place(rule),
                        f"The rule that `{rule.first}` comes first has no reason.",
                        "Add `reason:`, what would happen if it were broken.",
                    )
        case MatchQuestion():
            for item in question.items:
                if not item.reason:
                    yield _owed(
                        draft,
                        "Q032",
                        got.place(item),
                        f"The item `{item.id}` has no reason.",
                        "Add `reason:`, why it goes with its answer.",
                    )
        case NumberQuestion():
            for slip in question.slips:
                if not slip.reason:
                    yield _owed(
                        draft,
                        "Q047",
                        got.place(slip),
                        f"The slip `{slip.value[:40]}` has no reason.",
                        "Add `reason:`, what went wrong for someone who gets this number.",
                    )

"""What each question and lesson owes: its sources, and a reason for everything that can be got wrong."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.file_read import FileRead
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


def check_grounds(file: FileRead, draft_course: bool) -> Iterator[Problem]:
    """Missing sources and reasons: faults, or warnings while the course, lesson or question is a draft."""
    for fact in file.every(CriticalFact):
        if not fact.sources:
            yield _owed(
                draft_course,
                "C030",
                file.place(fact),
                f"The critical fact {fact.id} names no source.",
                _ADD_SOURCE,
            )
    for lesson in file.every(Lesson):
        if not lesson.sources:
            yield _owed(
                draft_course or lesson.draft,
                "C030",
                file.place(lesson),
                "The lesson names no source.",
                _ADD_SOURCE,
            )
        if not lesson.body:
            yield fault(
                "L004",
                file.place(lesson, "body"),
                "The lesson has no body.",
                "Add at least one block, such as `- text: …`.",
            )
    for question in file.every(Question):
        draft = draft_course or question.draft
        if not question.sources:
            yield _owed(draft, "C030", file.place(question), "The question names no source.", _ADD_SOURCE)
        yield from _reasons(file, question, draft)


_ADD_SOURCE = "Add `source:` with an id of sources.yml, or `kit` for the kit sheet."


def _owed(draft: bool, code: str, place: Place, message: str, mend: str) -> Problem:
    return (warning if draft else fault)(code, place, message, mend)


def _reasons(file: FileRead, question: Question, draft: bool) -> Iterator[Problem]:
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
                        file.place(option),
                        f"The wrong option `{option.id}` has no reason.",
                        "Add `reason:`, what someone who picks it has not understood.",
                    )
        case OrderQuestion():
            for rule in question.rules:
                if not rule.reason:
                    yield _owed(
                        draft,
                        "Q024",
                        file.place(rule),
                        f"The rule that `{rule.first}` comes first has no reason.",
                        "Add `reason:`, what would happen if it were broken.",
                    )
        case MatchQuestion():
            for item in question.items:
                if not item.reason:
                    yield _owed(
                        draft,
                        "Q032",
                        file.place(item),
                        f"The item `{item.id}` has no reason.",
                        "Add `reason:`, why it goes with its answer.",
                    )
        case NumberQuestion():
            for slip in question.slips:
                if not slip.reason:
                    yield _owed(
                        draft,
                        "Q047",
                        file.place(slip),
                        f"The slip `{slip.value[:40]}` has no reason.",
                        "Add `reason:`, what went wrong for someone who gets this number.",
                    )

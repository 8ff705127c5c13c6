"""What each question and lesson owes: its sources, and a reason for everything that can be got wrong."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.file_read import FileRead
from journeybook.content.model import (
    Bench,
    Calculator,
    ChoiceQuestion,
    ChoicesQuestion,
    CriticalFact,
    Drill,
    Duty,
    JobCard,
    Lesson,
    MatchQuestion,
    NumberQuestion,
    OrderQuestion,
    PracticalStep,
    Question,
    SpotQuestion,
    TriageQuestion,
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
    for bench in file.every(Bench):
        if not bench.caution:
            yield _owed(
                draft_course,
                "N018",
                file.place(bench),
                "The bench has no caution, so nothing on it says that it is not the learner's own machine.",
                'Add `caution:`, what it must not be taken for, such as `caution: "A model with invented values. It '
                'does not test your own machine."`.',
            )
        if not bench.sources:
            yield _owed(draft_course, "C030", file.place(bench), "The bench names no source.", _ADD_SOURCE)
    for drill in file.every(Drill):
        if not drill.sources:
            yield _owed(draft_course, "C030", file.place(drill), "The drill names no source.", _ADD_SOURCE)
    for calculator in file.every(Calculator):
        if not calculator.sources:
            place = file.place(calculator)
            yield _owed(draft_course, "C030", place, "The calculator names no source.", _ADD_SOURCE)
    for noun, thing in _of_the_shop(file):
        if not thing.sources:
            yield _owed(draft_course, "C030", file.place(thing), f"{noun} names no source.", _ADD_SOURCE)
    for question in file.every(Question):
        draft = draft_course or question.draft
        if not question.sources:
            yield _owed(draft, "C030", file.place(question), "The question names no source.", _ADD_SOURCE)
        yield from _reasons(file, question, draft)


def _of_the_shop(file: FileRead) -> Iterator[tuple[str, PracticalStep | JobCard | Duty]]:
    for step in file.every(PracticalStep):
        yield f"The step {step.id}", step
    for card in file.every(JobCard):
        yield "The job card", card
    for duty in file.every(Duty):
        yield f"The duty {duty.id}", duty


_ADD_SOURCE = "Add `source:` with an id of sources.yml, or `kit` for the kit sheet."


def _owed(draft: bool, code: str, place: Place, message: str, mend: str) -> Problem:
    return (warning if draft else fault)(code, place, message, mend)


def _reasons(file: FileRead, question: Question, draft: bool) -> Iterator[Problem]:
    match question:
        case ChoiceQuestion() | ChoicesQuestion() | SpotQuestion():
            right = set(question.right) if isinstance(question, ChoicesQuestion) else {question.right}
            if not right <= {option.id for option in question.offered}:
                return  # Which options are wrong is not known until ``right`` is mended.
            for option in question.offered:
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
        case TriageQuestion():
            for unit in question.units:
                if not unit.reason:
                    yield _owed(
                        draft,
                        "Q067",
                        file.place(unit),
                        f"The unit `{unit.id}` has no reason.",
                        "Add `reason:`, why it belongs where it belongs.",
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

"""Duties: each is covered by something, by things that are there, and rests on sources of its own profile.

The duties of every profile are looked at, whichever is being built, as with the profiles themselves.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journeybook.content.gathered import Gathered, Naming
from journeybook.content.model import Citation, Duties, Duty
from journeybook.content.whole_file import whole_file
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.source.near import nearest

_WHERE_TO_ADD = {
    Naming.LESSON: "as a lesson",
    Naming.QUESTION: "to a bank",
    Naming.STEP: "to the steps in practicals/",
    Naming.JOB_CARD: "to job-cards/, as NAME.yml",
}


def check_duties(got: Gathered) -> Iterator[Problem]:
    """Everything that can be wrong with duties beyond the shape of their files."""
    limited = {one.id: one for one in got.every(Citation) if one.only}
    retired = {name for name, question in got.questions.items() if question.retired is not None}
    for duties in got.every(Duties):
        yield from _check_profile(got, duties)
        for duty in duties.duties:
            yield from _check_covering(got, duty, retired)
            yield from _check_sources(got, duties.id, duty, limited)


def _check_profile(got: Gathered, duties: Duties) -> Iterator[Problem]:
    there = got.layout.profiles
    if duties.id not in there:
        near = nearest(duties.id, there) or tuple(sorted(there))[:8]
        yield fault(
            "C028",
            whole_file(got.layout.named["duties"][duties.id]),
            f"The course has no profile called `{duties.id}`.",
            f"Call the file like the profile that it is for: {' or '.join(f'`{one}.yml`' for one in near)}, "
            f"or add profiles/{duties.id}.yml.",
        )


def _check_covering(got: Gathered, duty: Duty, retired: set[str]) -> Iterator[Problem]:
    naming = _naming(duty)
    if not any(names for _, _, names in naming):
        yield fault(
            "U002",
            got.place(duty, "covered-by"),
            f"Nothing covers the duty {duty.id}.",
            "Name the lessons, questions, steps of practicals or job cards that cover it, or take it out.",
        )
    for key, what, names in naming:
        for index, name in got.missing(what, names):
            yield fault(
                "U004" if what is Naming.QUESTION else "U001",
                got.place(duty.covered_by, key, index),
                f"There is no {what} called `{name}`.",
                f"{got.names[what].hint(name)} `{name}` {_WHERE_TO_ADD[what]}.",
            )
    for index, name in enumerate(duty.covered_by.questions):
        if name in retired:
            yield fault(
                "U003",
                got.place(duty.covered_by, "questions", index),
                f"The question `{name}` is retired, so nobody is asked it any more.",
                "Name a question that is still asked, or take it out.",
            )


def _naming(duty: Duty) -> list[tuple[str, Naming, Sequence[str]]]:
    by = duty.covered_by
    return [
        ("lessons", Naming.LESSON, by.lessons),
        ("questions", Naming.QUESTION, by.questions),
        ("practicals", Naming.STEP, by.practicals),
        ("job-cards", Naming.JOB_CARD, by.job_cards),
    ]


def _check_sources(
    got: Gathered, profile: str, duty: Duty, limited: dict[str, Citation]
) -> Iterator[Problem]:
    for index, name in enumerate(duty.sources):
        if name in limited and not limited[name].is_for(profile):
            yield fault(
                "C036",
                got.place(duty, "source", index),
                f"The source `{name}` does not exist in the profile `{profile}`, whose duty this is.",
                f"Name another source, or add `{profile}` to its `only` in sources.yml.",
                (got.place(limited[name], "only"),),
            )

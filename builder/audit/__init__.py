"""The audit: rules about good courses and good questions, one a file.

Each finds warnings, none stops a build.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Protocol

from journeybook.audit.above_options import find_above_options
from journeybook.audit.audit_memo import AuditMemo
from journeybook.audit.duties_covered import find_duties_hardly_covered
from journeybook.audit.guessable_drills import find_guessable_drills
from journeybook.audit.idle_sources import find_idle_sources
from journeybook.audit.idle_things import find_idle_things
from journeybook.audit.job_card_length import find_long_job_cards
from journeybook.audit.lesson_length import find_long_lessons
from journeybook.audit.longest_option import find_telling_lengths
from journeybook.audit.near_duplicates import find_near_duplicates
from journeybook.audit.outcomes_checked import find_outcomes_not_checked
from journeybook.audit.outcomes_practised import find_outcomes_not_practised
from journeybook.audit.outcomes_taught import find_outcomes_not_taught
from journeybook.audit.typeable_numbers import find_untypeable_numbers
from journeybook.content.model import Course
from journeybook.diagnostics.problem import Problem


class _Remembering(Protocol):
    """A rule that looks only at what its memo does not know yet."""

    def __call__(self, course: Course, memo: AuditMemo | None = None) -> Iterator[Problem]:
        """Each thing to improve."""


_OF_OUTLINES: tuple[Callable[[Course], Iterator[Problem]], ...] = (
    find_outcomes_not_taught,
    find_outcomes_not_practised,
    find_outcomes_not_checked,
    find_long_lessons,
    find_idle_sources,
    find_idle_things,
    find_duties_hardly_covered,
    find_long_job_cards,
)
_OF_EVERY_QUESTION: tuple[_Remembering, ...] = (
    find_telling_lengths,
    find_above_options,
    find_near_duplicates,
    find_untypeable_numbers,
    find_guessable_drills,
)
"""Those that look into every question, and remember the ones they have seen."""
RULES: tuple[Callable[[Course], Iterator[Problem]], ...] = (*_OF_OUTLINES, *_OF_EVERY_QUESTION)


def audit(course: Course, memo: AuditMemo | None = None) -> list[Problem]:
    """What every rule finds in a course, sorted by place.

    With the ``memo`` of an earlier audit of the same course, only what is made of other objects than then is looked
    at again.
    """
    memo = memo or AuditMemo()
    with memo.one_round():
        found = [problem for rule in _OF_OUTLINES for problem in rule(course)]
        found += [problem for rule in _OF_EVERY_QUESTION for problem in rule(course, memo)]
    return sorted(found, key=lambda problem: (problem.place, problem.code))

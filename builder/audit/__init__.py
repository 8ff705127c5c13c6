"""The audit: rules about good courses and good questions, one a file.

Each finds warnings, none stops a build.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from journeybook.audit.above_options import find_above_options
from journeybook.audit.idle_sources import find_idle_sources
from journeybook.audit.lesson_length import find_long_lessons
from journeybook.audit.longest_option import find_telling_lengths
from journeybook.audit.near_duplicates import find_near_duplicates
from journeybook.audit.outcomes_checked import find_outcomes_not_checked
from journeybook.audit.outcomes_practised import find_outcomes_not_practised
from journeybook.audit.outcomes_taught import find_outcomes_not_taught
from journeybook.audit.typeable_numbers import find_untypeable_numbers
from journeybook.content.model import Course
from journeybook.diagnostics.problem import Problem

RULES: tuple[Callable[[Course], Iterator[Problem]], ...] = (
    find_outcomes_not_taught,
    find_outcomes_not_practised,
    find_outcomes_not_checked,
    find_long_lessons,
    find_telling_lengths,
    find_above_options,
    find_near_duplicates,
    find_idle_sources,
    find_untypeable_numbers,
)


def audit(course: Course) -> list[Problem]:
    """What every rule finds in a course, sorted by place."""
    found = [problem for rule in RULES for problem in rule(course)]
    return sorted(found, key=lambda problem: (problem.place, problem.code))

"""Cross-checks: what no single file can know.

One concept a file; each yields problems about what has been gathered.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from journeybook.content.checks.answers import check_choices, check_matches
from journeybook.content.checks.blueprint import check_blueprint
from journeybook.content.checks.given_numbers import check_given_numbers
from journeybook.content.checks.grounds import check_grounds
from journeybook.content.checks.limited_sources import check_limited_sources
from journeybook.content.checks.numbers import check_numbers
from journeybook.content.checks.order_rules import check_order_rules
from journeybook.content.checks.practice import check_practice
from journeybook.content.checks.references import check_references
from journeybook.content.checks.repeated_ids import check_ids_of_the_course, check_ids_within_questions
from journeybook.content.checks.taken_ids import check_taken_ids
from journeybook.content.checks.wording import check_wording
from journeybook.content.gathered import Gathered
from journeybook.diagnostics.problem import Problem

CHECKS: tuple[Callable[[Gathered], Iterator[Problem]], ...] = (
    check_ids_of_the_course,
    check_ids_within_questions,
    check_taken_ids,
    check_references,
    check_wording,
    check_practice,
    check_choices,
    check_order_rules,
    check_matches,
    check_numbers,
    check_given_numbers,
    check_grounds,
    check_limited_sources,
    check_blueprint,
)
"""Every check, in no meaningful order: problems are sorted by place."""


def cross_check(gathered: Gathered) -> Iterator[Problem]:
    """Every problem that every check finds."""
    for check in CHECKS:
        yield from check(gathered)

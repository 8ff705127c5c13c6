"""Cross-checks: what no single file can know.

One concept a file; each yields problems about what has been gathered.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from journeybook.content.checks.answers import check_choices, check_matches
from journeybook.content.checks.assembly_benches import check_assembly_benches
from journeybook.content.checks.benches import check_fan_benches
from journeybook.content.checks.blueprint import check_blueprint
from journeybook.content.checks.by_hand import check_parts, check_spots, check_triages
from journeybook.content.checks.calculators import check_calculators
from journeybook.content.checks.days_to_come import check_days_to_come
from journeybook.content.checks.drills import check_drills
from journeybook.content.checks.duties import check_duties
from journeybook.content.checks.given_numbers import check_given_numbers
from journeybook.content.checks.grounds import check_grounds
from journeybook.content.checks.job_cards import check_job_cards
from journeybook.content.checks.limited_sources import check_limited_sources
from journeybook.content.checks.numbers import check_numbers
from journeybook.content.checks.order_rules import check_order_rules
from journeybook.content.checks.practicals import check_practicals
from journeybook.content.checks.practice import check_practice
from journeybook.content.checks.references import check_references
from journeybook.content.checks.repeated_ids import check_ids_of_the_course, check_ids_within_questions
from journeybook.content.checks.shown_as_typed import check_shown_as_typed
from journeybook.content.checks.shown_once import check_shown_once
from journeybook.content.checks.taken_ids import check_taken_ids
from journeybook.content.checks.trials import check_trials
from journeybook.content.checks.word_parts import check_word_parts
from journeybook.content.checks.wording import check_wording
from journeybook.content.file_read import FileRead
from journeybook.content.gathered import Gathered, SheetsRead
from journeybook.content.model import BenchReading, NumberQuestion, Question
from journeybook.diagnostics.problem import Problem

OF_QUESTIONS: tuple[Callable[[FileRead], Iterator[Problem]], ...] = (
    check_ids_within_questions,
    check_choices,
    check_order_rules,
    check_matches,
    check_spots,
    check_triages,
)
"""Checks that look at the questions of one file alone; they are not repeated for a file that is as it was."""
OF_THE_COURSE: tuple[Callable[[Gathered], Iterator[Problem]], ...] = (
    check_ids_of_the_course,
    check_taken_ids,
    check_references,
    check_wording,
    check_word_parts,
    check_days_to_come,
    check_practice,
    check_parts,
    check_trials,
    check_limited_sources,
    check_duties,
    check_blueprint,
)
"""Checks that need several files. They are in no meaningful order: problems are sorted by place."""


def cross_check(got: Gathered) -> Iterator[Problem]:
    """Every problem that every check finds."""
    sheets = got.sheets
    for file in got.files:
        yield from file.worked_out(_check_file, got.draft)
        # Only what reads off a bench is looked at again when a bench has changed.
        reads = file.every(BenchReading)
        yield from file.worked_out(
            _check_arithmetic, sheets._replace(benches=got.named["benches"]) if reads else sheets
        )
        yield from file.worked_out(check_calculators, sheets)
        yield from file.worked_out(check_fan_benches, sheets)
    for check in OF_THE_COURSE:
        yield from check(got)


def _check_file(file: FileRead, draft_course: bool) -> list[Problem]:
    problems = [*check_shown_as_typed(file), *check_grounds(file, draft_course), *check_drills(file)]
    problems += [*check_practicals(file), *check_job_cards(file)]
    problems += check_shown_once(file)
    problems += check_assembly_benches(file, draft_course)
    if file.every(Question):
        problems += [problem for check in OF_QUESTIONS for problem in check(file)]
    return problems


def _check_arithmetic(file: FileRead, sheets: SheetsRead) -> list[Problem]:
    return (
        [*check_numbers(file, sheets), *check_given_numbers(file, sheets)]
        if file.every(NumberQuestion)
        else []
    )

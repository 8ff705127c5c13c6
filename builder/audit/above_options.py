"""A006: no option points at the others.

Haladyna, Downing and Rodriguez 2002, guidelines 25 and 26 (the numbers from memory). English texts only.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from journeybook.audit.audit_memo import AuditMemo
from journeybook.content.model import Bank, ChoiceQuestion, ChoicesQuestion, Course
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem

_POINTS_AT_OTHERS = re.compile(
    r"\b(?:all|none|both|neither|any) of (?:the above|these (?:answers|options))\b", re.IGNORECASE
)


def find_above_options(course: Course, memo: AuditMemo | None = None) -> Iterator[Problem]:
    """Options that say all or none of the above."""
    if not course.languages[0].startswith("en"):
        return
    memo = memo or AuditMemo()
    for bank in course.banks:
        yield from memo.of_bank(_in_bank, bank)


def _in_bank(bank: Bank) -> Iterator[Problem]:
    for question in bank.questions:
        if isinstance(question, ChoiceQuestion | ChoicesQuestion) and question.retired is None:
            for option in question.options:
                found = _POINTS_AT_OTHERS.search(option.text)
                if found:
                    yield warning(
                        "A006",
                        option.place,
                        f"The option says “{found[0]}”, but options are shuffled and stand alone.",
                        "Say what is meant, or take the option out; several right answers make a "
                        "`choices` question.",
                    )

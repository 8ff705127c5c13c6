"""A009: whoever knows the right number can also type it.

A right number such as 1/3 has no decimals that end, and one such as 1.250 is read as twelve hundred and fifty by
some; without a tolerance nobody is marked right, however well they worked it out. What can be typed is asked of
the marking's own reader.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import partial
from typing import Any

from journeybook.audit.audit_memo import AuditMemo
from journeybook.content.model import Course, NumberQuestion
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem
from journeybook.marking.keys import lower
from journeybook.marking.typed_number import MOST_DIGITS, read_typed


def find_untypeable_numbers(course: Course, memo: AuditMemo | None = None) -> Iterator[Problem]:
    """Number questions with a variant that no typed number answers rightly; the first such variant is named."""
    memo = memo or AuditMemo()
    for question in course.questions.values():
        if isinstance(question, NumberQuestion):
            # Expressions name values of the two sheets, and some read off a bench.
            parts = (
                question,
                course.kit,
                course.profile,
                *(course.benches.values() if question.reads else ()),
            )
            yield from memo.same(("number", question.id), parts, partial(_in_question, question, course))


def _in_question(question: NumberQuestion, course: Course) -> Sequence[Problem]:
    key: dict[str, Any] = dict(lower(question, course))
    for row, accepted in enumerate(key["variants"], start=1):
        why = why_untypeable(Fraction(accepted["low"]), Fraction(accepted["high"]))
        if why:
            where = f" in row {row} of `given`" if question.given else ""
            found = warning(
                "A009",
                question.place,
                f"Nobody can type the right number{where}: {why}.",
                "Give it a tolerance, or round the right number with `round(…, places)`.",
            )
            return (found,)
    return ()


def why_untypeable(low: Fraction, high: Fraction) -> str:
    """Why no number from ``low`` to ``high``, written with as few decimals as will do, is read; empty if one is."""
    for places in range(MOST_DIGITS):
        least, most = -(-low * 10**places // 1), high * 10**places // 1
        if least > most:
            continue
        problems = [read_typed(_decimal(int(number), places)).problem for number in {least, most}]
        if "" in problems:
            return ""
        if "ambiguous" in problems:
            return "with three decimals it may as well mean thousands"
        break
    return f"it has more than {MOST_DIGITS} digits"


def _decimal(number: int, places: int) -> str:
    digits = str(abs(number)).rjust(places + 1, "0")
    whole, decimals = digits[: len(digits) - places], digits[len(digits) - places :]
    return ("-" if number < 0 else "") + (f"{whole}.{decimals}" if decimals else whole)

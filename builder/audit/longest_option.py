"""A005: the longest option is not the right one more often than chance.

An option stands out when it is more than 1.25 times as long as the next (Haladyna, Downing and Rodriguez
2002, Applied Measurement in Education 15:309-334, guideline 24; its number from memory). If lengths told
nothing, the one that stands out among k options would be the right one with probability 1/k; over a bank
the number of hits follows the Poisson binomial distribution. A bank is named when so many hits or more had
a probability below 0.01.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from journeybook.audit.audit_memo import AuditMemo
from journeybook.content.model import Bank, ChoiceQuestion, Course
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem

LEAST_PROBABILITY = 0.01


def find_telling_lengths(course: Course, memo: AuditMemo | None = None) -> Iterator[Problem]:
    """Banks whose choice questions give their answers away by length."""
    memo = memo or AuditMemo()
    for bank in course.banks:
        yield from memo.of_bank(_in_bank, bank)


def _in_bank(bank: Bank) -> Iterator[Problem]:
    telling: list[ChoiceQuestion] = []
    chances: list[float] = []
    for question in bank.questions:
        if isinstance(question, ChoiceQuestion) and question.retired is None:
            longest = standing_out(question)
            if longest:
                chances.append(1 / len(question.options))
                if longest == question.right:
                    telling.append(question)
    if telling and at_least(len(telling), chances) < LEAST_PROBABILITY:
        yield warning(
            "A005",
            bank.place,
            f"Where one option is much longer than the rest it is the right one in {len(telling)} of "
            f"{len(chances)} questions, so the length gives it away.",
            "Shorten right answers, or write longer wrong ones.",
            [question.place for question in telling[:5]],
        )


def standing_out(question: ChoiceQuestion) -> str:
    """Id of the option that is more than 1.25 times as long as the next, or nothing."""
    ordered = sorted(question.options, key=lambda option: len(option.text), reverse=True)
    if len(ordered) > 1 and 4 * len(ordered[0].text) > 5 * len(ordered[1].text):
        return ordered[0].id
    return ""


def at_least(hits: int, chances: Iterable[float]) -> float:
    """Probability of ``hits`` or more among independent events, by convolution."""
    spread = [1.0]
    for chance in chances:
        spread = [
            (spread[count] if count < len(spread) else 0.0) * (1 - chance)
            + (spread[count - 1] * chance if count else 0.0)
            for count in range(len(spread) + 1)
        ]
    return sum(spread[hits:])

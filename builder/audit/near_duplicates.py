"""A007: no two questions ask nearly the same. What "nearly" means: ``alike_texts``."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from journeybook.audit.alike_texts import AlikeTexts
from journeybook.audit.audit_memo import AuditMemo
from journeybook.content.model import Course, Question
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem

_WORD = re.compile(r"\w+")


def find_near_duplicates(course: Course, memo: AuditMemo | None = None) -> Iterator[Problem]:
    """Each question that nearly repeats an earlier one, with that one's place."""
    texts: AlikeTexts[str, Question] = AlikeTexts(_plain) if memo is None else memo.alike(_plain)
    questions = course.questions
    for earlier, later in texts.pairs(questions):
        yield warning(
            "A007",
            questions[later].place,
            f"This question asks nearly the same as {earlier}.",
            "Change one of them so that it asks something else, or retire it.",
            (questions[earlier].place,),
        )


def words_of(question: Question) -> str:
    """Everything a learner reads before answering."""
    items, offered = (part.text for part in question.partnered), (part.text for part in question.offered)
    return " ".join([question.ask, *items, *offered])


def _plain(question: Question) -> str:
    """A question's words without case, signs or repeated spaces."""
    return " ".join(_WORD.findall(words_of(question).casefold()))


def alike_pairs(texts: Sequence[str]) -> Iterator[tuple[int, int]]:
    """For each text that is alike to an earlier one, the pair (earlier, it) that is most alike."""
    alike: AlikeTexts[int, str] = AlikeTexts(str)
    yield from alike.pairs(dict(enumerate(texts)))

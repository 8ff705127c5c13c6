"""A007: no two questions ask nearly the same.

Texts (the question and all it offers) are compared by their groups of three letters: near means that two
questions share 60 per cent of the groups that either has (Jaccard index). Which pairs are worth comparing
is found by their words: two sets of words that are so alike share several of their rarest members (prefix
filtering: Chaudhuri, Ganti and Kaushik 2006, ICDE; cited from memory). A word is remembered for the last
questions that hold it only, so that the work grows with the questions and not with their square.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict, deque
from collections.abc import Iterator, Sequence
from itertools import chain

from journeybook.content.model import Course, Question
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem

ALIKE_PERCENT = 60
_SHARED = 3
"""How many of the rarest words two texts must share to be compared; fewer where a text has few words."""
_WORDS_PERCENT = 40
"""How many of its words a text must share besides; inflected words are not shared, though their letters are."""
_REMEMBERED = 16
"""For how many questions a word is remembered."""
_WORD = re.compile(r"\w+")


def find_near_duplicates(course: Course) -> Iterator[Problem]:
    """Each question that nearly repeats an earlier one, with that one's place."""
    questions = list(course.questions.values())
    texts = [_plain(words_of(question)) for question in questions]
    for earlier, later in alike_pairs(texts):
        yield warning(
            "A007",
            questions[later].place,
            f"This question asks nearly the same as {questions[earlier].id}.",
            "Change one of them so that it asks something else, or retire it.",
            (questions[earlier].place,),
        )


def words_of(question: Question) -> str:
    """Everything a learner reads before answering."""
    items, offered = (part.text for part in question.partnered), (part.text for part in question.offered)
    return " ".join([question.ask, *items, *offered])


def _plain(text: str) -> str:
    """A text without case, signs or repeated spaces."""
    return " ".join(_WORD.findall(text.casefold()))


def groups_of_three(plain: str) -> frozenset[str]:
    """The groups of three letters of a text without signs."""
    return frozenset(plain[at : at + 3] for at in range(len(plain) - 2))


def alike_pairs(texts: Sequence[str]) -> Iterator[tuple[int, int]]:
    """For each text that is alike to an earlier one, the pair (earlier, it) that is most alike."""
    groups: dict[int, frozenset[str]] = {}

    def groups_of(number: int) -> frozenset[str]:
        if number not in groups:
            groups[number] = groups_of_three(texts[number])
        return groups[number]

    for later, candidates in enumerate(_worth_comparing([frozenset(text.split()) for text in texts])):
        best = (0, 1, -1)
        for earlier in candidates:
            shared = len(groups_of(later) & groups_of(earlier))
            either = len(groups_of(later)) + len(groups_of(earlier)) - shared
            if shared * 100 >= ALIKE_PERCENT * either and shared * best[1] > best[0] * either:
                best = (shared, either, earlier)
        if best[2] >= 0:
            yield best[2], later


def _worth_comparing(words: Sequence[frozenset[str]]) -> Iterator[list[int]]:
    """For each set of words the earlier ones that share enough of its rarest words, in order."""
    common = Counter(chain.from_iterable(words))
    holders: dict[str, deque[int]] = defaultdict(lambda: deque(maxlen=_REMEMBERED))
    for number, own in enumerate(words):
        least = -(-len(own) * ALIKE_PERCENT // 100)
        needed = min(_SHARED, least)
        rarest = sorted(sorted(own), key=common.__getitem__)[: len(own) - least + needed]
        met = Counter(chain.from_iterable([holders[word] for word in rarest]))
        yield sorted(
            earlier
            for earlier, times in met.items()
            if times >= needed and len(own & words[earlier]) * 100 >= _WORDS_PERCENT * len(own)
        )
        for word in rarest:
            holders[word].append(number)

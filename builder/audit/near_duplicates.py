"""A007: no two questions ask nearly the same.

Texts (the question and all it offers) are compared by their groups of three letters: near means that two
questions share 60 per cent of the groups that either has (Jaccard index). Which pairs need comparing is
found by prefix filtering: two sets that are so alike must share one of their rarest groups (Chaudhuri,
Ganti and Kaushik 2006, ICDE; cited from memory), so the work grows with the alike pairs and not with the
square of the questions.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator

from journeybook.content.model import (
    ChoiceQuestion,
    ChoicesQuestion,
    Course,
    MatchQuestion,
    OrderQuestion,
    Question,
)
from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Problem

ALIKE_PERCENT = 60


def find_near_duplicates(course: Course) -> Iterator[Problem]:
    """Each question that nearly repeats an earlier one, with that one's place."""
    questions = list(course.questions.values())
    groups = [groups_of_three(words_of(question)) for question in questions]
    for earlier, later in alike_pairs(groups):
        yield warning(
            "A007",
            questions[later].place,
            f"This question asks nearly the same as {questions[earlier].id}.",
            "Change one of them so that it asks something else, or retire it.",
            (questions[earlier].place,),
        )


def words_of(question: Question) -> str:
    """Everything a learner reads before answering."""
    texts = [question.ask]
    match question:
        case ChoiceQuestion() | ChoicesQuestion():
            texts.extend(option.text for option in question.options)
        case OrderQuestion():
            texts.extend(step.text for step in question.steps)
        case MatchQuestion():
            texts.extend(item.text for item in question.items)
            texts.extend(answer.text for answer in question.answers)
    return " ".join(texts)


def groups_of_three(text: str) -> frozenset[str]:
    """The groups of three letters of a text, without case, signs or repeated spaces."""
    plain = " ".join(re.findall(r"\w+", text.casefold()))
    return frozenset(plain[at : at + 3] for at in range(len(plain) - 2))


def alike_pairs(sets: list[frozenset[str]]) -> Iterator[tuple[int, int]]:
    """For each set that is alike to an earlier one, the pair (earlier, it) that is most alike."""
    common = Counter(group for one in sets for group in one)
    rarest: dict[str, list[int]] = defaultdict(list)
    for later, groups in enumerate(sets):
        ordered = sorted(groups, key=lambda group: (common[group], group))
        prefix = ordered[: len(ordered) - -(-len(ordered) * ALIKE_PERCENT // 100) + 1]
        best = (0, 1, -1)
        for earlier in sorted({one for group in prefix for one in rarest[group]}):
            shared = len(groups & sets[earlier])
            either = len(groups) + len(sets[earlier]) - shared
            if shared * 100 >= ALIKE_PERCENT * either and shared * best[1] > best[0] * either:
                best = (shared, either, earlier)
        if best[2] >= 0:
            yield best[2], later
        for group in prefix:
            rarest[group].append(later)

"""choice, choices and match: the right answers are there, and something else is there to choose."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Sequence

from journeybook.content.file_read import FileRead
from journeybook.content.model import (
    ChoiceQuestion,
    ChoicesQuestion,
    MatchItem,
    MatchQuestion,
    Option,
    Question,
)
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.source.near import choice_of, nearest


def check_choices(file: FileRead) -> Iterator[Problem]:
    """``right`` names options, each once, and not all of them."""
    for question in file.every(ChoiceQuestion):
        yield from right_exists(file, question, (question.right,), question.options)
        yield from different_texts(file, question.options)
    for choices in file.every(ChoicesQuestion):
        yield from right_exists(file, choices, choices.right, choices.options)
        yield from different_texts(file, choices.options)
        for index, name in enumerate(choices.right):
            if name in choices.right[:index]:
                yield fault(
                    "Q011",
                    file.place(choices, "right", index),
                    f"The right answers name `{name}` twice.",
                    "Take one of the two out.",
                )
        if {option.id for option in choices.options} <= set(choices.right):
            yield fault(
                "Q010",
                file.place(choices, "right"),
                "Every option is right, so there is nothing to choose.",
                "Add an option that is wrong, with its reason.",
            )


def check_matches(file: FileRead) -> Iterator[Problem]:
    """Each item goes with an answer that is there, and no answer serves two items."""
    for question in file.every(MatchQuestion):
        answers = [answer.id for answer in question.answers]
        taken: dict[str, MatchItem] = {}
        for item in question.items:
            if item.goes_with not in answers:
                yield fault(
                    "Q030",
                    file.place(item, "goes-with"),
                    f"The item goes with `{item.goes_with}`, and there is no such answer.",
                    use_one_of(answers, item.goes_with, "answer"),
                )
            elif item.goes_with in taken:
                yield fault(
                    "Q031",
                    file.place(item, "goes-with"),
                    f"The answer `{item.goes_with}` serves two items.",
                    "Give one of the items another answer; add one if there is none left.",
                    (file.place(taken[item.goes_with], "goes-with"),),
                )
            taken.setdefault(item.goes_with, item)
        yield from different_texts(file, question.answers)


def right_exists(
    file: FileRead, question: Question, right: Sequence[str], options: Sequence[Option]
) -> Iterator[Problem]:
    """Each id that ``right`` names is one of the options."""
    names = [option.id for option in options]
    for index, name in enumerate(right):
        if name not in names:
            yield fault(
                "Q012",
                file.place(question, "right", index),
                "The right answer names an option that is not there.",
                use_one_of(names, name, "option"),
            )


def use_one_of(names: Sequence[str], wrong: str, noun: str) -> str:
    """A cure for a name that is not there."""
    near = nearest(wrong, names) if len(names) > 8 else ()
    article = "an" if noun[0] in "aeiou" else "a"
    return f"{choice_of(near or names[:8])}, or add {article} {noun} with id `{wrong}`."


def different_texts(file: FileRead, options: Iterable[Option]) -> Iterator[Problem]:
    """No two say the same."""
    seen: dict[str, Option] = {}
    for option in options:
        text = option.text if option.text.isascii() else unicodedata.normalize("NFC", option.text)
        words = " ".join(text.casefold().split())
        first = seen.setdefault(words, option)
        if first is not option:
            yield fault(
                "Q014",
                file.place(option, "text"),
                f"`{first.id}` and `{option.id}` say the same.",
                "Change one of them, or take it out.",
                (file.place(first, "text"),),
            )

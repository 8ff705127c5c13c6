"""order questions: the rules name steps, and some order keeps all of them."""

from __future__ import annotations

from collections.abc import Iterator

from journeybook.content.checks.circles import find_circle
from journeybook.content.file_read import FileRead
from journeybook.content.model import OrderQuestion
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.source.near import choice_of, nearest


def check_order_rules(file: FileRead) -> Iterator[Problem]:
    """There are rules, about steps that are there, and they do not run in a circle."""
    for question in file.every(OrderQuestion):
        if not question.rules:
            yield fault(
                "Q023",
                file.place(question, "rules"),
                "The question has no rules, so any order would be right.",
                "Add at least one: `{first: …, then: […], reason: …}`.",
            )
        problems = list(_check_names(file, question))
        yield from problems
        if not problems:
            yield from _check_circle(file, question)


def _check_names(file: FileRead, question: OrderQuestion) -> Iterator[Problem]:
    steps = [step.id for step in question.steps]
    for rule in question.rules:
        for key, index, name in [
            ("first", None, rule.first),
            *(("then", at, one) for at, one in enumerate(rule.then)),
        ]:
            if name not in steps:
                near = nearest(name, steps) or tuple(steps[:12])
                yield fault(
                    "Q020",
                    file.place(rule, key, index),
                    f"The rule names the step `{name}`, and there is no such step.",
                    f"{choice_of(near)}, or add a step with id `{name}`.",
                )
        if rule.first in rule.then:
            yield fault(
                "Q021",
                file.place(rule, "then", rule.then.index(rule.first)),
                f"The rule puts the step `{rule.first}` before itself.",
                f"Take `{rule.first}` out of `then`.",
            )


def _check_circle(file: FileRead, question: OrderQuestion) -> Iterator[Problem]:
    after: dict[str, list[str]] = {}
    for rule in question.rules:
        after.setdefault(rule.first, []).extend(rule.then)
    circle = find_circle(after)
    if circle:
        shown = " → ".join([*circle, circle[0]])
        edge = (circle[-1], circle[0])
        rule = next(rule for rule in question.rules if rule.first == edge[0] and edge[1] in rule.then)
        yield fault(
            "Q022",
            file.place(rule),
            f"The rules run in a circle: {shown}.",
            "Take out one of these rules, so that some order keeps all of them.",
        )

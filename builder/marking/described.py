"""A part of the model as plain data, field by field: for what is shown as its author describes it."""

from __future__ import annotations

from dataclasses import fields, is_dataclass

from journeybook.content.model import Bench, Question, SettingQuestion
from journeybook.marking.kind import Json
from journeybook.marking.question_texts import Say

_NOT_SAID = frozenset({"place", "id", "sources", "example"})
"""Where it was read from, and what stands beside the texts."""


def public_bench(bench: Bench, language: str, say: Say) -> dict[str, Json]:
    """Return ``{"kind", "source", "example", "texts": {language: every other field}}``."""
    return {
        "kind": bench.kind,
        "source": list(bench.sources),
        "example": bench.example,
        "texts": {language: described(bench, say, without=_NOT_SAID)},
    }


def public_trial(question: Question, say: Say) -> dict[str, Json]:
    """Return ``{"trial": …}`` where a bench stands above a question, else nothing."""
    return {} if question.trial is None else {"trial": described(question.trial, say)}


def private_goal(question: Question, say: Say) -> dict[str, Json]:
    """Return ``{"setting": {"goals", "first", "last", "near"}}`` of a setting question, else nothing."""
    if not isinstance(question, SettingQuestion):
        return {}
    goals: list[Json] = [described(goal, say) for goal in question.goals]
    return {
        "setting": {"goals": goals, "first": question.first, "last": question.last, "near": question.near}
    }


def described(thing: object, say: Say, *, without: frozenset[str] = frozenset({"place"})) -> Json:
    """Return plain data: a mapping of field names for a dataclass, texts with their references replaced."""
    if is_dataclass(thing):
        return {
            field.name.replace("_", "-"): described(getattr(thing, field.name), say)
            for field in fields(thing)
            if field.name not in without
        }
    if isinstance(thing, str):
        return say(thing)
    if isinstance(thing, tuple):
        return [described(each, say) for each in thing]
    if thing is None or isinstance(thing, bool | int):
        return thing
    raise TypeError(f"{type(thing).__name__} has no plain form")

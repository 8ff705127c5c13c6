"""What an observation is worth: whether it fits the course it names, and whether its result can stand.

*Competent* is the assessor's word, but not against the record: it stands only where every safety condition was
confirmed, nothing was ended early, and every critical step was shown, unprompted (common practice, no source: a step
that needs a hint has not been shown, and a critical one is what hurts somebody when it is missed).
*Not yet competent* always stands. ``js/pure/observed.js`` is the twin of the rule, so that the page never offers what
would not stand; ``tests/vectors/observations.json`` holds both together.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Place, Problem
from journeybook.marking.observation import Observation, StepSeen

_FROM_THE_PAGE = "Use the file that the page of the practical saved."
_MESSAGES = {
    "safety": "Not every safety condition was confirmed before the first step.",
    "stopped": "The practical was ended before its last step.",
    "step": "The critical step “{step}” was not shown without help.",
}
_OTHER_COURSE = "Use the compiled.json of the release that the record names."


@dataclass(frozen=True, kw_only=True)
class Against:
    """One reason why *competent* cannot stand."""

    why: str
    """``safety``: not every condition was confirmed; ``stopped``: it was ended early; ``step``: a critical one was
    not shown without help.
    """
    step: str = ""
    """Which step; empty for the other reasons."""


@dataclass(frozen=True, kw_only=True)
class Watched:
    """What a record says that an employer may rely on."""

    competent: bool
    shown: int
    """Steps that were shown without help."""
    steps: int
    missed: tuple[str, ...]
    """Critical steps that were not, in the practical's order."""


def against_competent(
    *, safety: Sequence[bool], stopped: bool, steps: Iterable[StepSeen], critical: Collection[str]
) -> Iterator[Against]:
    """Yield each reason why *competent* cannot stand, the steps in the order given."""
    if not all(safety):
        yield Against(why="safety")
    if stopped:
        yield Against(why="stopped")
    for step in steps:
        if step.step in critical and not step.is_shown:
            yield Against(why="step", step=step.step)


def watched(observation: Observation, compiled: Mapping[str, Any]) -> Watched:
    """Return what the record says; asked only of one in which ``misfits`` finds no fault."""
    facts = _steps_of(observation, compiled)
    shown = {step.step for step in observation.steps if step.is_shown}
    missed = tuple(facts_id for facts_id, critical in facts.items() if critical and facts_id not in shown)
    return Watched(
        competent=observation.result == "competent", shown=len(shown), steps=len(facts), missed=missed
    )


def misfits(
    observation: Observation, compiled: Mapping[str, Any], digest: str, name: str = "observation"
) -> Iterator[Problem]:
    """Yield what is wrong with a record; ``compiled`` is the content of compiled.json, ``digest`` its SHA-256."""
    place = Place(file=name, length=0)
    if observation.digest != digest or observation.course != compiled["course"]:
        yield fault(
            "O003",
            place,
            f"The record is of {observation.course} with contents {observation.digest[:16]}…, "
            f"this course is {compiled['course']}, {digest[:16]}….",
            _OTHER_COURSE,
        )
        return
    practical = compiled["public"]["practicals"].get(observation.practical)
    if practical is None:
        message = f"The course has no practical “{observation.practical[:80]}”."
        yield fault("O004", place, message, _FROM_THE_PAGE)
        return
    steps = [step["id"] for step in practical["steps"]]
    conditions = len(practical["texts"][compiled["languages"][0]]["safety"])
    if [step.step for step in observation.steps] != steps or len(observation.safety) != conditions:
        message = (
            "Its steps or its safety conditions are not those of the practical, one for one and in order."
        )
        yield fault("O004", place, message, _FROM_THE_PAGE)
        return
    yield from _against_competent(observation, compiled, place)
    for who, text in (("person", observation.person.name), ("assessor", observation.assessor.name)):
        if not text.strip():
            message = f"The record does not say who the {who} is."
            yield fault("O006", place, message, "Enter the name on the page, and save the record again.")
    if observation.ended < observation.started:
        yield warning(
            "O007",
            place,
            f"The record ended at {observation.ended}, before it began at {observation.started}.",
            "Set the clock of the device; the day on the sheet counts.",
        )


def _against_competent(
    observation: Observation, compiled: Mapping[str, Any], place: Place
) -> Iterator[Problem]:
    """Yield each reason why *competent* cannot stand."""
    if observation.result != "competent":
        return
    mend = "Show the practical again on another day; a record is never changed afterwards."
    critical = {id for id, is_critical in _steps_of(observation, compiled).items() if is_critical}
    for against in against_competent(
        safety=observation.safety, stopped=observation.stopped, steps=observation.steps, critical=critical
    ):
        yield fault("O005", place, _MESSAGES[against.why].format(step=against.step), mend)


def _steps_of(observation: Observation, compiled: Mapping[str, Any]) -> dict[str, bool]:
    """Step id -> whether it is critical, in the practical's order."""
    practical = compiled["public"]["practicals"][observation.practical]
    return {step["id"]: step["critical"] for step in practical["steps"]}

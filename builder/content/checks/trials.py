"""Benches above questions: what a trial names is on its bench, and what is asked can be set as well as missed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from math import prod
from typing import NamedTuple

from journeybook.content.arithmetic import Flaw
from journeybook.content.bench_goals import accepted_places, stands_at
from journeybook.content.fan_numbers import worked_out
from journeybook.content.fan_values import ALARMS, WorkedOut
from journeybook.content.file_read import FileRead
from journeybook.content.gathered import Gathered, SheetsRead
from journeybook.content.model import Bench, FanBench, Goal, Question, SettingQuestion, Trial
from journeybook.content.number_values import given_number
from journeybook.diagnostics.codes import fault
from journeybook.diagnostics.problem import Problem
from journeybook.source.near import choice_of


class _Around(NamedTuple):
    """What trials depend on outside of their own file."""

    benches: Mapping[str, Bench]
    sheets: SheetsRead


def check_trials(got: Gathered) -> Iterator[Problem]:
    """Every trial and every goal."""
    around = _Around(got.named["benches"], got.sheets)
    for file in got.files:
        if any((file.every(Trial), file.every(SettingQuestion))):
            yield from file.worked_out(_check_file, around)


def _check_file(file: FileRead, around: _Around) -> list[Problem]:
    return [
        problem for question in file.every(Question) for problem in _check_question(file, question, around)
    ]


def _check_question(file: FileRead, question: Question, around: _Around) -> Iterator[Problem]:
    trial = question.trial
    if trial is None:
        if isinstance(question, SettingQuestion):
            yield fault(
                "N012",
                file.place(question),
                "A setting question needs a bench to set.",
                "Add `trial:` with a bench and the controls that can be moved.",
            )
        return
    bench = around.benches.get(trial.bench)
    if bench is None or around.sheets.unread:
        return  # Told where names are checked, or where the bench or the sheet is.
    if not isinstance(bench, FanBench):
        yield fault(
            "N011",
            file.place(trial, "bench"),
            f"The bench {trial.bench} has no controls, so it cannot stand above a question.",
            "Name a bench of `kind: fan`.",
        )
        return
    worked = worked_out(bench, around.sheets.values)
    if isinstance(worked, list):
        return
    problems = [*_check_trial(file, trial, worked)]
    if isinstance(question, SettingQuestion):
        problems += _check_setting(file, question, trial, worked, around.sheets)
        if not problems:
            problems += _check_goal(file, question, worked, around.sheets)
    yield from problems


def _check_trial(file: FileRead, trial: Trial, worked: WorkedOut) -> Iterator[Problem]:
    controls = {one.control.of: one for one in worked.controls}
    for key, names in (("start", list(trial.start.given)), ("moves", trial.moves), ("hides", trial.hides)):
        for index, name in enumerate(names):
            if name not in controls:
                yield fault(
                    "N011",
                    file.place(trial, key, index),
                    f"The bench {trial.bench} has no control `{name}`.",
                    _one_of(controls),
                )
    for name, written in trial.start.given.items():
        control = controls.get(name)
        if control is not None and control.find(written) is None:
            yield fault(
                "N008",
                file.place(trial, "start"),
                f"The control {name} has no place `{written[:60]}`.",
                f"{choice_of(place.id for place in control.places[:12])}.",
            )
    for name in trial.hides:
        if name in trial.moves:
            yield fault(
                "N011",
                file.place(trial, "hides"),
                f"The control {name} can be moved, so its place cannot be hidden.",
                "Take it out of `hides`, or out of `moves`.",
            )


def _check_setting(
    file: FileRead, question: SettingQuestion, trial: Trial, worked: WorkedOut, sheets: SheetsRead
) -> Iterator[Problem]:
    if not trial.moves:
        yield fault(
            "N012",
            file.place(trial, "moves"),
            "Nothing can be set: the trial has no `moves`.",
            "Add `moves:` with the controls that the learner sets.",
        )
    for key, control in (("first", question.first), ("last", question.last)):
        if control and control not in trial.moves:
            yield fault(
                "N011",
                file.place(question, key),
                f"`{key}` names {control}, which the trial does not let anybody move.",
                "Name one of the controls under `moves`.",
            )
    if question.first and question.last:
        yield fault(
            "N015",
            file.place(question, "last"),
            "A goal asks for the first place and for the last at once.",
            "Take one of the two out.",
        )
    if question.near and not (question.first or question.last):
        yield fault(
            "N015",
            file.place(question, "near"),
            "`near` says how far off the first or last place may be, and there is no `first` or `last`.",
            "Add `first:` or `last:`, or take `near` out.",
        )
    there = [reading.id for reading in worked.readings]
    for goal in question.goals:
        yield from _check_one_goal(file, goal, there, sheets)


def _check_one_goal(
    file: FileRead, goal: Goal, there: Sequence[str], sheets: SheetsRead
) -> Iterator[Problem]:
    if goal.of not in there:
        yield fault(
            "N011",
            file.place(goal, "of"),
            f"The bench does not show {goal.of}.",
            _one_of(there),
        )
    if (goal.of in ALARMS) != bool(goal.state) or (goal.of in ALARMS) == bool(goal.tests):
        yield fault(
            "N015",
            file.place(goal),
            f"Nothing says what is asked of {goal.of}.",
            "Add `is: sounding` or `is: silent`, and nothing else."
            if goal.of in ALARMS
            else "Add `at-least`, `at-most`, `above` or `below` with a number, and no `is`.",
        )
    for key, written in goal.tests.items():
        number = given_number(written, sheets.values)
        if isinstance(number, Flaw):
            yield fault("N001", file.place(goal, key), f"{number.message}.", number.mend)


def _one_of(names: Iterable[str]) -> str:
    return f"{choice_of(names)}."


def _check_goal(
    file: FileRead, question: SettingQuestion, worked: WorkedOut, sheets: SheetsRead
) -> Iterator[Problem]:
    assert question.trial is not None
    accepted = accepted_places(worked, question, sheets.values)
    counts = {one.control.of: len(one.places) for one in worked.controls}
    every = prod(counts[control] for control in question.trial.moves)
    if not accepted:
        yield fault(
            "N013",
            file.place(question, "goal"),
            "No place of the controls under `moves` meets the goal.",
            "Change the goal, where the trial starts, or what can be moved.",
        )
    elif len(accepted) == every:
        yield fault(
            "N014",
            file.place(question, "goal"),
            "Every place of the controls under `moves` meets the goal, so nothing has to be set.",
            "Make the goal narrower, or change where the trial starts.",
        )
    elif _start_of(worked, question.trial) in accepted:
        yield fault(
            "N017",
            file.place(question, "trial"),
            "The trial starts where the goal is met, so the answer would be to do nothing.",
            "Let `start:` place a control under `moves` where the goal is not met.",
        )


def _start_of(worked: WorkedOut, trial: Trial) -> tuple[int, ...]:
    stands = stands_at(worked, trial)
    return tuple(stands[control] for control in trial.moves)

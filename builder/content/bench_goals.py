"""Which places of a bench's controls meet what a setting question asks for."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from itertools import product

from journeybook.content.arithmetic import Flaw
from journeybook.content.fan_values import ALARMS, WorkedOut
from journeybook.content.model import Goal, SettingQuestion, Trial
from journeybook.content.number_values import Sheets, given_number

_TESTS: dict[str, Callable[[Fraction, Fraction], bool]] = {
    "at-least": lambda found, wanted: found >= wanted,
    "at-most": lambda found, wanted: found <= wanted,
    "above": lambda found, wanted: found > wanted,
    "below": lambda found, wanted: found < wanted,
}


def stands_at(worked: WorkedOut, trial: Trial) -> dict[str, int]:
    """Control -> its place when the trial begins. Raises ``ValueError`` for a place that is not there."""
    given = trial.start.given
    found: dict[str, int] = {}
    for control in worked.controls:
        name = given.get(control.control.of)
        place = control.start if name is None else control.find(name)
        if place is None:
            raise ValueError(f"{control.control.of} has no place {name}")
        found[control.control.of] = place
    return found


def accepted_places(worked: WorkedOut, question: SettingQuestion, sheets: Sheets) -> list[tuple[int, ...]]:
    """Every combination of places of the moved controls that is right; the others stay where the trial begins.

    With ``first`` or ``last`` only the extreme place of that control at which the goals are met, for each setting of
    the other moved controls that has one there, and ``near`` places to either side.
    """
    trial = question.trial
    if trial is None:
        return []
    start = stands_at(worked, trial)
    counts = {one.control.of: len(one.places) for one in worked.controls}
    tests = list(_tests(worked, question.goals, sheets))
    table = worked.table

    def meets(places: tuple[int, ...]) -> bool:
        now = table.index({**start, **dict(zip(trial.moves, places, strict=True))})
        return all(holds(table.columns[reading][now]) for reading, holds in tests)

    everywhere = list(product(*(range(counts[control]) for control in trial.moves)))
    meeting = [places for places in everywhere if meets(places)]
    extreme = question.first or question.last
    if not extreme or not meeting:
        return meeting
    at = trial.moves.index(extreme)
    best = (min if question.first else max)(places[at] for places in meeting)
    limit = range(best - question.near, best + question.near + 1)
    others = {places[:at] + places[at + 1 :] for places in meeting if places[at] == best}
    return [
        places for places in everywhere if places[at] in limit and places[:at] + places[at + 1 :] in others
    ]


def _tests(
    worked: WorkedOut, goals: tuple[Goal, ...], sheets: Sheets
) -> Iterator[tuple[str, Callable[[int], bool]]]:
    """Each test as a function of the table's integer: what is shown is what is judged."""
    decimals = {reading.id: reading.places for reading in worked.readings}
    for goal in goals:
        if goal.of in ALARMS:
            wanted_on = int(goal.state == "sounding")
            yield goal.of, lambda value, wanted=wanted_on: value == wanted  # type: ignore[misc]
            continue
        for key, written in goal.tests.items():
            number = given_number(written, sheets)
            if isinstance(number, Flaw):
                raise ValueError(number.message)
            yield goal.of, _judge(key, number, decimals[goal.of])


def _judge(key: str, wanted: Fraction, places: int) -> Callable[[int], bool]:
    test = _TESTS[key]
    scale = Fraction(10) ** -places
    return lambda value: test(value * scale, wanted)

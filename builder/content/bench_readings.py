"""Numbers that a question reads off a bench: the very integers that stand on the page, at the places that are named."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import NamedTuple

from journeybook.content.fan_numbers import worked_out
from journeybook.content.fan_values import ALARMS, WorkedOut
from journeybook.content.model import Bench, BenchReading, FanBench, NumberQuestion
from journeybook.content.number_values import Sheets
from journeybook.source.near import nearest


class ReadingFlaw(NamedTuple):
    """Why nothing can be read off."""

    key: str
    """The key under which the cause stands."""
    message: str
    mend: str


def read_off(
    reading: BenchReading, benches: Mapping[str, Bench], sheets: Sheets
) -> Fraction | ReadingFlaw | None:
    """What the bench shows, in the unit of its reading; None where the bench itself is missing or unsound.

    What ``at`` does not name stands where the bench begins.
    """
    bench = benches.get(reading.bench)
    if bench is None:
        return None
    if not isinstance(bench, FanBench):
        return ReadingFlaw("bench", f"The bench {bench.id} shows no numbers.", "Name a bench of `kind: fan`.")
    worked = worked_out(bench, sheets)
    if isinstance(worked, list):
        return None
    stands = _stands(reading, worked)
    if isinstance(stands, ReadingFlaw):
        return stands
    for shown in worked.readings:
        if shown.id == reading.of and shown.id not in ALARMS:
            return Fraction(worked.table.value(shown.id, stands), 10**shown.places)
    return _no_such(reading, "of", "reading", reading.of, [one.of for one in bench.readings])


def readings_of(
    question: NumberQuestion, benches: Mapping[str, Bench], sheets: Sheets
) -> dict[str, Fraction]:
    """Every number that a question reads off. Raises ``ValueError`` for one that the cross-checks refuse."""
    found: dict[str, Fraction] = {}
    for name, reading in question.reads.items():
        value = read_off(reading, benches, sheets)
        if not isinstance(value, Fraction):
            why = value.message if value is not None else f"the bench {reading.bench} cannot be read"
            raise ValueError(f"{question.id}: {name}: {why}")
        found[name] = value
    return found


def _stands(reading: BenchReading, worked: WorkedOut) -> dict[str, int] | ReadingFlaw:
    """Control -> its place."""
    controls = {control.control.of: control for control in worked.controls}
    found = {name: control.start for name, control in controls.items()}
    for name, place in reading.at.given.items():
        if name not in controls:
            return _no_such(reading, "at", "control", name, controls)
        number = controls[name].find(place)
        if number is None:
            return _no_such(
                reading, "at", f"place of `{name}`", place, [one.id for one in controls[name].places]
            )
        found[name] = number
    return found


def _no_such(reading: BenchReading, key: str, noun: str, name: str, there: Iterable[str]) -> ReadingFlaw:
    names = list(there)
    near = nearest(name, names) or tuple(names[:12])
    return ReadingFlaw(
        key,
        f"The bench {reading.bench} has no {noun} called `{name[:40]}`.",
        f"Write {' or '.join(f'`{one}`' for one in near)}.",
    )

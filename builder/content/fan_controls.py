"""The controls of a fan bench with all their places, and what stands still."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from journeybook.benches.fan_unit import CONTROLS
from journeybook.content.arithmetic import decimal_text
from journeybook.content.fan_number_reader import NumberReader
from journeybook.content.fan_values import ShownControl, ShownPlace, place_named
from journeybook.content.model.fan_bench import FanBench, FanControl
from journeybook.source.near import choice_of

MOST_ON_A_CONTROL = 101
USUAL: Mapping[str, Fraction] = {
    "load": Fraction(0),
    "opening": Fraction(100),
    "temperature": Fraction(20),
    "height": Fraction(0),
    "charge": Fraction(100),
}
"""Where a control stands that a bench neither has nor fixes."""
BOUNDS: Mapping[str, tuple[int, int]] = {
    "setting": (0, 1_000_000),
    "load": (0, 100),
    "opening": (0, 100),
    "temperature": (-60, 100),
    "height": (-500, 9_000),
    "charge": (0, 100),
}
"""What a control can stand for, in the units of ``benches.fan_unit``."""


def control_of(
    read: NumberReader, bench: FanBench, control: FanControl, flow: Fraction
) -> ShownControl | None:
    """One control with its places; None after noting why not."""
    if (control.range is None) == (not control.places):
        read.flaw(
            "N004",
            control,
            None,
            f"The control {control.of} has {'neither' if control.range is None else 'both'} `places` "
            f"{'nor' if control.range is None else 'and'} `range`.",
            "Give it named `places`, or a `range` of values.",
        )
        return None
    if control.of == "charge" and bench.battery is None:
        read.flaw(
            "N009",
            control,
            "of",
            "Nothing here has a charge: the bench has no battery.",
            "Add `battery:`, or take the control out.",
        )
    if control is not next(one for one in bench.controls if one.of == control.of):
        read.flaw(
            "N006", control, "of", f"The control {control.of} stands twice.", "Take one of the two out."
        )
    places = tuple(_places(read, control, flow))
    if not places:
        return None
    values = [place.value for place in places]
    rising = sorted(set(values))
    if len(values) < 2 or (values != rising and values != rising[::-1]):
        read.flaw(
            "N005",
            control,
            "places" if control.places else "range",
            f"The places of {control.of} do not lie in a row: at least two different values, rising or falling.",
            "Put them in order, each value once.",
        )
        return None
    start = place_named(places, read.resolved(control.start))
    if start is None:
        read.flaw(
            "N008",
            control,
            "start",
            f"The control {control.of} has no place `{control.start[:60]}`.",
            f"{choice_of(place.id for place in places[:12])}.",
        )
        return None
    return ShownControl(control=control, places=places, start=start)


def _places(read: NumberReader, control: FanControl, flow: Fraction) -> Iterator[ShownPlace]:
    least, most = BOUNDS[control.of]
    if control.of == "setting":
        most = int(most / flow)
    if control.range is None:
        for place in control.places:
            value = read.number(place, "value", place.value, least=least, most=most)
            if value is not None:
                yield ShownPlace(id=place.id, value=value, label=place.label)
        return
    span = control.range
    first = read.number(span, "from", span.least, least=least, most=most)
    last = read.number(span, "to", span.most, least=least, most=most)
    step = read.number(span, "step", span.step, above=True)
    if first is None or last is None or step is None:
        return
    count = abs(last - first) / step
    if count.denominator != 1 or not 1 <= count < MOST_ON_A_CONTROL:
        read.flaw(
            "N004",
            span,
            "step",
            f"From {decimal_text(first)} to {decimal_text(last)} in steps of {decimal_text(step)} is no whole number "
            f"of steps from 1 to {MOST_ON_A_CONTROL - 1}.",
            "Choose a step that ends at `to`.",
        )
        return
    towards = step if last > first else -step
    for number in range(int(count) + 1):
        value = first + number * towards
        yield ShownPlace(id=decimal_text(value), value=value, label="")


def fixed_of(read: NumberReader, bench: FanBench, flow: Fraction) -> tuple[tuple[str, float], ...]:
    """The value, in the units of the physics, of each control that the bench does not have."""
    given = bench.fixed.given
    moved = {control.of for control in bench.controls}
    fixed = {control: value for control, value in USUAL.items() if control not in moved}
    for control, written in given.items():
        if control in moved:
            read.flaw(
                "N006",
                bench,
                "fixed",
                f"`fixed` gives a value for {control}, which is a control.",
                "Take it out of `fixed`, or take the control out.",
            )
            continue
        least, most = BOUNDS[control]
        value = read.number(bench, "fixed", written, least=least, most=most)
        if value is not None:
            fixed[control] = value * flow if control == "setting" else value
    if "setting" not in moved and "setting" not in given:
        read.flaw(
            "N016",
            bench,
            "controls",
            "Nothing says which flow the controller holds.",
            "Add a control `of: setting`, or a flow under `fixed:` as `setting`.",
        )
    return tuple((control, float(fixed[control])) for control in CONTROLS if control in fixed)

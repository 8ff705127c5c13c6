"""A line that a bench gives has to come in the units of the scales that it is drawn on."""

from __future__ import annotations

from fractions import Fraction

from journeybook.content.arithmetic import decimal_text
from journeybook.content.formats.plan_files import BenchLineFile
from journeybook.content.model import FanBench
from journeybook.content.plans.values import UnsoundError, Values, Where
from journeybook.content.units import canonical_unit, factor_between
from journeybook.drawing.plans.chart import Scale


def check_line_units(
    written: BenchLineFile, bench: FanBench, across: Scale, up: Scale, by: Fraction, values: Values
) -> None:
    """Refuse a line in another unit than its scales'.

    Compared is what the table of units knows; a scale without a unit, or with words for one, is the author's.
    Raises ``UnsoundError``.
    """
    shown = next((one.unit for one in bench.readings if one.of == written.of), "")
    reading, side = canonical_unit(shown), canonical_unit(up.unit)
    if reading is not None and side is not None:
        factor = factor_between(side, reading)
        if factor != by:
            _refuse_side(written, reading, side, factor, by, values)
    control = next((one for one in bench.controls if one.of == written.along), None)
    if control is None:
        return
    moved = canonical_unit(control.unit or (bench.flow_unit if control.of == "setting" else ""))
    foot = canonical_unit(across.unit)
    if moved is not None and foot is not None and moved != foot:
        values.refuse(
            "F032",
            Where(written, "along"),
            f"`{written.along}` stands in {moved}, but the scale at the foot is in {foot}.",
            f'Write `unit: "{moved}"` under `across`, and its numbers in that unit.',
        )
        raise UnsoundError


def _refuse_side(
    written: BenchLineFile, reading: str, side: str, factor: Fraction | None, by: Fraction, values: Values
) -> None:
    divided = f" divided by {decimal_text(by, 9)}" if by != 1 else ""
    if factor is None:
        mend = f'Write `unit: "{reading}"` under `up` without `divide`, or take another reading.'
    elif factor == 1:
        mend = "Take `divide` out."
    else:
        mend = f'Write `divide: "{decimal_text(factor, 9)}"`, or `unit: "{reading}"` under `up` without `divide`.'
    values.refuse(
        "F032",
        Where(written, "divide" if written.divide else "of"),
        f"`{written.of}` is shown in {reading}{divided}, but the scale at the side is in {side}.",
        mend,
    )
    raise UnsoundError

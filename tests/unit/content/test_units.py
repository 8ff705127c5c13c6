from __future__ import annotations

from fractions import Fraction

import pint
import pytest

from journeybook.content.units import UNITS, canonical_unit, factor_between

PINT_NAMES = {
    "L/min": "liter/minute", "L/s": "liter/second", "m3/h": "meter**3/hour", "m3/min": "meter**3/minute",
    "ft3/min": "foot**3/minute", "m3": "meter**3", "L": "liter", "mL": "milliliter", "ft3": "foot**3",
    "in": "inch", "ft": "foot", "um": "micrometer", "m2": "meter**2", "cm2": "centimeter**2", "mm2":
    "millimeter**2",
    "mmH2O": "conventional_mmH2O", "inH2O": "conventional_inH2O",
    "kg/m3": "kilogram/meter**3", "g/m3": "gram/meter**3", "mg/m3": "milligram/meter**3", "ug/m3":
    "microgram/meter**3",
    "%": "percent", "s": "second", "min": "minute", "h": "hour", "d": "day", "t": "metric_ton", "g": "gram",
    "Ah": "ampere*hour", "mAh": "milliampere*hour", "Wh": "watt*hour", "kWh": "kilowatt*hour", "Nm":
    "newton*meter",
    "rpm": "turn/minute", "m/s": "meter/second", "m/min": "meter/minute", "mm/min": "millimeter/minute",
    "km/h": "kilometer/hour", "deg": "degree", "K": "kelvin",
}  # fmt: skip
COMPARED_AS_IT_STANDS = {"°C", "dB", "mmH2O", "inH2O"}

registry = pint.UnitRegistry(non_int_type=Fraction)


def in_pint(symbol: str) -> pint.Unit:
    return registry.Unit(PINT_NAMES.get(symbol, symbol))


PAIRS = [
    (one, other)
    for one in UNITS
    for other in UNITS
    if one < other
    and UNITS[one].dimension == UNITS[other].dimension
    and not {one, other} & COMPARED_AS_IT_STANDS
]


@pytest.mark.parametrize(("one", "other"), PAIRS)
def test_a_factor_is_that_of_an_independent_table(one: str, other: str) -> None:
    ours = factor_between(one, other)
    theirs = (1 * in_pint(one)).to(in_pint(other)).magnitude
    assert ours is not None
    assert float(ours) == pytest.approx(float(theirs), rel=1e-12)


@pytest.mark.parametrize(
    ("amount", "unit", "into", "expected"),
    [
        (170, "L/min", "ft3/min", "6.0034933427"),  # pint and scipy, in agreement
        (1, "inH2O", "Pa", "249.08891"),  # NIST SP 811 B.8, conventional inch of water
        (1, "mmH2O", "Pa", "9.80665"),  # NIST SP 811 B.8, conventional millimetre of water
        (1, "ft3", "L", "28.316846592"),  # exact, from the inch
        (1, "m3/h", "L/min", "16.6666666667"),
    ],
)
def test_published_conversions(amount: int, unit: str, into: str, expected: str) -> None:
    factor = factor_between(unit, into)
    assert factor is not None
    assert abs(amount * factor - Fraction(expected)) < Fraction(1, 10**9)


def test_factors_are_exact() -> None:
    assert factor_between("m3/h", "L/min") == Fraction(50, 3)
    assert factor_between("ft3", "L") == Fraction("28.316846592")


def test_units_of_different_things_have_no_factor() -> None:
    assert factor_between("mm", "kg") is None
    assert factor_between("mm", "furlong") is None
    assert factor_between("K", "°C") is None


def test_every_unit_states_its_source() -> None:
    assert all(unit.source and unit.dimension and unit.factor > 0 for unit in UNITS.values())


@pytest.mark.parametrize(
    ("written", "symbol"),
    [
        ("l/min", "L/min"),
        ("m³/h", "m3/h"),
        ("µg/m³", "ug/m3"),
        ("μg/m3", "ug/m3"),
        (" mm ", "mm"),
        ("cfm", "ft3/min"),
    ],
)
def test_usual_spellings_are_known(written: str, symbol: str) -> None:
    assert canonical_unit(written) == symbol


def test_a_unit_that_is_not_there_has_no_symbol() -> None:
    assert canonical_unit("furlong") is None


def test_capitals_that_change_the_meaning_are_not_passed_over() -> None:
    assert canonical_unit("MPa") == "MPa"
    assert canonical_unit("mpa") is None

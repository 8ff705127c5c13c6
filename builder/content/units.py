"""Units that number questions may use, with exact factors.

Sources: [SI] BIPM, The International System of Units (SI Brochure), 9th edition 2019, tables 2 to 8; [811]
NIST Special Publication 811, 2008 edition, appendix B: inch = 0.0254 m and foot = 0.3048 m exactly, litre =
10^-3 m3, conventional inch and millimetre of water = 249.0889 Pa and 9.80665 Pa (from 1000 kg/m3 and 9.80665
m/s2). Numbers of tables and sections are from memory; the factors themselves are held against an independent
table in the tests. Temperatures in degrees Celsius have no factor: they are compared as they stand. ppm and %
are shares of one.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

_INCH = Fraction(254, 10_000)
_FOOT = 12 * _INCH
_LITRE = Fraction(1, 1000)
_STANDARD_GRAVITY = Fraction(980_665, 100_000)


@dataclass(frozen=True, kw_only=True)
class Unit:
    """A unit of a quantity."""

    symbol: str
    dimension: str
    """What it measures, in words; units of one dimension convert into one another."""
    factor: Fraction
    """How many of the dimension's base unit it is, exactly."""
    source: str


def _table() -> dict[str, Unit]:
    micro = Fraction(1, 1_000_000)
    milli = Fraction(1, 1000)
    rows: list[tuple[str, str, Fraction | int, str]] = [
        # base m3/s
        ("L/min", "volume flow", _LITRE / 60, "SI table 8 (litre, minute)"),
        ("L/s", "volume flow", _LITRE, "SI table 8 (litre)"),
        ("m3/h", "volume flow", Fraction(1, 3600), "SI table 8 (hour)"),
        ("m3/min", "volume flow", Fraction(1, 60), "SI table 8 (minute)"),
        ("ft3/min", "volume flow", _FOOT**3 / 60, "811 B.6 (foot), SI table 8 (minute)"),
        # base m3
        ("m3", "volume", 1, "SI"),
        ("L", "volume", _LITRE, "SI table 8"),
        ("mL", "volume", _LITRE * milli, "SI table 8, table 7 (milli)"),
        ("ft3", "volume", _FOOT**3, "811 B.6 (foot)"),
        # base m
        ("m", "length", 1, "SI table 2"),
        ("cm", "length", Fraction(1, 100), "SI table 7 (centi)"),
        ("mm", "length", milli, "SI table 7 (milli)"),
        ("um", "length", micro, "SI table 7 (micro)"),
        ("km", "length", 1000, "SI table 7 (kilo)"),
        ("in", "length", _INCH, "811 B.6"),
        ("ft", "length", _FOOT, "811 B.6"),
        # base m2
        ("m2", "area", 1, "SI"),
        ("cm2", "area", Fraction(1, 10_000), "SI table 7 (centi)"),
        ("mm2", "area", micro, "SI table 7 (milli)"),
        # base Pa
        ("Pa", "pressure", 1, "SI table 4"),
        ("hPa", "pressure", 100, "SI table 7 (hecto)"),
        ("kPa", "pressure", 1000, "SI table 7 (kilo)"),
        ("MPa", "pressure", 1_000_000, "SI table 7 (mega)"),
        ("bar", "pressure", 100_000, "811 B.8"),
        ("mbar", "pressure", 100, "811 B.8"),
        ("mmH2O", "pressure", _STANDARD_GRAVITY, "811 B.8 (conventional)"),
        ("inH2O", "pressure", _STANDARD_GRAVITY * _INCH * 1000, "811 B.8 (conventional)"),
        # base kg/m3
        ("kg/m3", "mass in a volume", 1, "SI"),
        ("g/m3", "mass in a volume", milli, "SI table 7 (kilo)"),
        ("mg/m3", "mass in a volume", micro, "SI table 7 (milli)"),
        ("ug/m3", "mass in a volume", micro * milli, "SI table 7 (micro)"),
        # base one
        ("%", "share", Fraction(1, 100), "SI 5.4.7"),
        ("ppm", "share", micro, "SI 5.4.7"),
        # base s
        ("s", "time", 1, "SI table 2"),
        ("min", "time", 60, "SI table 8"),
        ("h", "time", 3600, "SI table 8"),
        ("d", "time", 86_400, "SI table 8"),
        # base kg
        ("kg", "mass", 1, "SI table 2"),
        ("g", "mass", milli, "SI table 7 (kilo)"),
        ("mg", "mass", micro, "SI table 7 (milli)"),
        ("t", "mass", 1000, "SI table 8 (tonne)"),
        # electricity, force, speed, angle
        ("V", "voltage", 1, "SI table 4"),
        ("mV", "voltage", milli, "SI table 7 (milli)"),
        ("A", "electric current", 1, "SI table 2"),
        ("mA", "electric current", milli, "SI table 7 (milli)"),
        ("Ah", "electric charge", 3600, "SI table 4 (coulomb), table 8 (hour)"),
        ("mAh", "electric charge", Fraction(36, 10), "SI table 4 (coulomb), table 8 (hour)"),
        ("W", "power", 1, "SI table 4"),
        ("kW", "power", 1000, "SI table 7 (kilo)"),
        ("Wh", "energy", 3600, "SI table 4 (joule), table 8 (hour)"),
        ("kWh", "energy", 3_600_000, "SI table 4 (joule), table 8 (hour)"),
        ("J", "energy", 1, "SI table 4"),
        ("N", "force", 1, "SI table 4"),
        ("kN", "force", 1000, "SI table 7 (kilo)"),
        ("Nm", "turning force", 1, "SI table 5"),
        ("rpm", "speed of turning", Fraction(1, 60), "811 B.8 (revolution per minute)"),
        ("m/s", "speed", 1, "SI table 5"),
        ("m/min", "speed", Fraction(1, 60), "SI table 8 (minute)"),
        ("mm/min", "speed", milli / 60, "SI table 8 (minute)"),
        ("km/h", "speed", Fraction(1000, 3600), "SI table 8 (hour)"),
        ("deg", "angle", 1, "SI table 8 (degree)"),
        ("K", "temperature difference", 1, "SI table 2"),
        ("°C", "temperature", 1, "SI table 4; compared as it stands"),
        ("dB", "level of sound", 1, "SI table 8; compared as it stands"),
    ]
    return {
        symbol: Unit(symbol=symbol, dimension=dimension, factor=Fraction(factor), source=source)
        for symbol, dimension, factor, source in rows
    }


UNITS: dict[str, Unit] = _table()
"""Symbol -> unit."""

_OTHER_SPELLINGS = {
    "l/min": "L/min", "l/s": "L/s", "l": "L", "ml": "mL", "litre": "L", "litres": "L", "lpm": "L/min",
    "m³": "m3", "m³/h": "m3/h", "m³/min": "m3/min", "ft³": "ft3", "ft³/min": "ft3/min", "cfm": "ft3/min",
    "m²": "m2", "cm²": "cm2", "mm²": "mm2", "µm": "um", "μm": "um",
    "µg/m³": "ug/m3", "μg/m³": "ug/m3", "ug/m³": "ug/m3", "µg/m3": "ug/m3", "μg/m3": "ug/m3",
    "mg/m³": "mg/m3", "g/m³": "g/m3", "kg/m³": "kg/m3",
    "mmh2o": "mmH2O", "inh2o": "inH2O", "mmH₂O": "mmH2O", "inH₂O": "inH2O", "pa": "Pa", "kpa": "kPa",
    "sec": "s", "seconds": "s", "minutes": "min", "minute": "min", "hours": "h", "hour": "h", "hr": "h",
    "days": "d", "day": "d", "C": "°C", "degC": "°C", "º C": "°C", "ºC": "°C", "° C": "°C", "°": "deg",
    "degrees": "deg",
    "v": "V", "ah": "Ah", "wh": "Wh", "mah": "mAh", "kwh": "kWh", "N·m": "Nm", "N m": "Nm", "1/min":
    "rpm", "r/min": "rpm",
    "percent": "%",
}  # fmt: skip


def canonical_unit(written: str) -> str | None:
    """The table's symbol for a unit as people write it (``l/min``, ``µg/m³``, ``m³/h``), or None where
    there is none.
    """
    text = " ".join(written.split())
    if text in UNITS:
        return text
    return _OTHER_SPELLINGS.get(text)


def factor_between(unit: str, into: str) -> Fraction | None:
    """How many of ``into`` one ``unit`` is, exactly.

    None where they measure different things or are not in the table.
    """
    one, other = UNITS.get(unit), UNITS.get(into)
    if one is None or other is None or one.dimension != other.dimension:
        return None
    return one.factor / other.factor

"""Dry air: how dense and how thick it is, by height and temperature.

Source: ISO 2533:1975, Standard atmosphere. Height is geopotential height up to 11 km. A bench may stand in air
that is warmer or colder than the standard one at its height: the pressure is then still the standard one.
"""

from __future__ import annotations

SEA_LEVEL_PRESSURE = 101_325.0
"""Pa; ISO 2533, 2.1."""
SEA_LEVEL_TEMPERATURE = 288.15
"""K; ISO 2533, 2.1."""
LAPSE = 0.0065
"""K/m, from sea level to 11 km; ISO 2533, table 4."""
GAS_CONSTANT = 287.05287
"""J/(kg K), of dry air; ISO 2533, 2.1."""
GRAVITY = 9.80665
"""m/s2; ISO 2533, 2.1."""
ZERO_CELSIUS = 273.15
_EXPONENT = GRAVITY / (LAPSE * GAS_CONSTANT)


def pressure(height: float) -> float:
    """Pressure of the standard atmosphere in Pa at a height in m."""
    return float(SEA_LEVEL_PRESSURE * (1 - LAPSE * height / SEA_LEVEL_TEMPERATURE) ** _EXPONENT)


def standard_temperature(height: float) -> float:
    """Temperature of the standard atmosphere in degrees Celsius at a height in m."""
    return SEA_LEVEL_TEMPERATURE - LAPSE * height - ZERO_CELSIUS


def density(height: float, celsius: float) -> float:
    """Density in kg/m3 of dry air at a height in m and a temperature in degrees Celsius (the law of ideal
    gases)."""
    return pressure(height) / (GAS_CONSTANT * (celsius + ZERO_CELSIUS))


def viscosity(celsius: float) -> float:
    """Dynamic viscosity of air in Pa s (Sutherland's formula with the constants of ISO 2533, 2.12)."""
    kelvin = celsius + ZERO_CELSIUS
    return float(1.458e-6 * kelvin**1.5 / (kelvin + 110.4))

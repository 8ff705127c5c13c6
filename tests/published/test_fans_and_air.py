"""The bench's physics against published values, the laws of fans, and another solver."""

from __future__ import annotations

import math

import pint
import pytest
from scipy.optimize import brentq

from journeybook.benches.atmosphere import density, pressure, standard_temperature, viscosity
from journeybook.benches.battery import Battery
from journeybook.benches.fan import FanCurve
from journeybook.benches.fan_unit import Circumstances, FanUnit
from journeybook.benches.indicator import reading, true_flow
from journeybook.benches.operating_point import Path, at_flow, at_speed, controlled

FAN = FanCurve(((0.0, 900.0), (100.0, 840.0), (200.0, 680.0), (280.0, 400.0), (340.0, 0.0)))

UNIT = FanUnit(
    fan=FAN,
    clean_filter=0.9,
    full_filter=3.2,
    duct=0.0075,
    efficiency=0.36,
    standby=0.4,
    churning=1.2,
    least_speed=0.3,
    battery=Battery(energy=37.0, cold=((-10.0, 0.75), (0.0, 0.85), (20.0, 1.0))),
    alarm_below=170.0,
    battery_alarm=5.0,
)


def _now(**changed: float) -> Circumstances:
    normal = {"setting": 175, "load": 0, "opening": 100, "temperature": 20, "height": 0, "charge": 100}
    return Circumstances(**{**normal, **changed})


@pytest.mark.parametrize(
    ("height", "kilopascals", "kilograms"),
    # ISO 2533, table of the standard atmosphere, geopotential height.
    [(0, 101.325, 1.2250), (500, 95.46, 1.1673), (1500, 84.56, 1.0581), (3000, 70.11, 0.9091)],
)
def test_the_standard_atmosphere_is_that_of_iso_2533(
    height: float, kilopascals: float, kilograms: float
) -> None:
    assert pressure(height) / 1000 == pytest.approx(kilopascals, abs=0.006)
    assert density(height, standard_temperature(height)) == pytest.approx(kilograms, abs=0.00006)


def test_air_at_15_degrees_is_as_thick_as_iso_2533_says() -> None:
    # ISO 2533, table 1: 1.7894e-5 Pa s at sea level.
    assert viscosity(15.0) == pytest.approx(1.7894e-5, rel=1e-4)


@pytest.mark.parametrize(
    ("celsius", "for_170", "for_115"),
    # Computed by hand from true = shown * sqrt(density at calibration / density), calibrated at 20 degrees.
    [(-10, 161.1, 109.0), (0, 164.1, 111.0), (40, 175.7, 118.9)],
)
def test_a_float_reads_wrong_in_air_that_it_was_not_made_for(
    celsius: float, for_170: float, for_115: float
) -> None:
    made_for, here = density(0, 20), density(0, celsius)
    assert true_flow(170, density=here, calibrated_at=made_for) == pytest.approx(for_170, abs=0.05)
    assert true_flow(115, density=here, calibrated_at=made_for) == pytest.approx(for_115, abs=0.05)


def test_a_reading_and_the_flow_behind_it_belong_together() -> None:
    shown = reading(180, density=1.3, calibrated_at=1.2041)
    assert true_flow(shown, density=1.3, calibrated_at=1.2041) == pytest.approx(180)


@pytest.mark.parametrize("speed", [0.4, 0.7, 0.9])
def test_on_a_turbulent_path_flow_pressure_and_power_follow_the_affinity_laws(speed: float) -> None:
    # Q ~ n, dp ~ n^2, P ~ n^3 (fan handbooks; from memory).
    path = Path(0.0, 0.01)
    full = at_speed(FAN, path, speed=1.0, density=1.0)
    slow = at_speed(FAN, path, speed=speed, density=1.0)
    assert slow.flow == pytest.approx(full.flow * speed)
    assert slow.pressure == pytest.approx(full.pressure * speed**2)
    assert slow.air_power == pytest.approx(full.air_power * speed**3)


@pytest.mark.parametrize("density_ratio", [0.74, 1.0, 1.15])
@pytest.mark.parametrize("laminar", [0.0, 0.9, 3.2, 30.0])
@pytest.mark.parametrize("turbulent", [0.0, 0.0075, 0.3, 5.0])
@pytest.mark.parametrize("speed", [0.3, 0.8, 1.0])
def test_the_operating_point_is_where_scipy_finds_it(
    density_ratio: float, laminar: float, turbulent: float, speed: float
) -> None:
    path = Path(laminar, turbulent)

    def surplus(flow: float) -> float:
        return FAN.pressure(flow, speed=speed, density=density_ratio) - path.pressure(flow)

    found = brentq(surplus, 0.0, FAN.free_flow * speed * (1 + 1e-9), xtol=1e-12, rtol=1e-14)
    assert at_speed(FAN, path, speed=speed, density=density_ratio).flow == pytest.approx(found, rel=1e-9)


@pytest.mark.parametrize("wanted", [60.0, 175.0, 205.0])
@pytest.mark.parametrize("laminar", [0.5, 1.5, 2.5])
def test_the_speed_that_holds_a_flow_is_the_one_scipy_finds(wanted: float, laminar: float) -> None:
    path = Path(laminar, 0.0075)
    held = at_flow(FAN, path, flow=wanted, density=1.0)

    def surplus(speed: float) -> float:
        return FAN.pressure(wanted, speed=speed) - path.pressure(wanted)

    if surplus(1.0) < 0:
        assert held is None
    else:
        assert held is not None
        assert held.speed == pytest.approx(brentq(surplus, wanted / FAN.free_flow, 1.0, xtol=1e-14), rel=1e-9)


def test_power_given_to_the_air_is_what_pint_says() -> None:
    units = pint.UnitRegistry()
    point = at_speed(FAN, Path(0.9, 0.0075), speed=1.0, density=1.0)
    watts = (point.pressure * units.pascal * point.flow * units.litre / units.minute).to("watt").magnitude
    assert point.air_power == pytest.approx(watts)


def test_the_controller_holds_the_flow_until_full_speed_and_then_gives_way() -> None:
    flows = [UNIT.at(_now(load=load))["flow"] for load in range(0, 101, 5)]
    speeds = [UNIT.at(_now(load=load))["speed"] for load in range(0, 101, 5)]
    held = [flow for flow in flows if flow == pytest.approx(175.0)]
    assert 10 < len(held) < len(flows)
    assert flows == sorted(flows, reverse=True)
    assert speeds == sorted(speeds)
    assert all(speed == pytest.approx(100) for flow, speed in zip(flows, speeds, strict=True) if flow < 174.9)


def test_a_covered_outlet_stops_the_air_makes_the_fan_race_and_sounds_the_alarm() -> None:
    covered = UNIT.at(_now(opening=0))
    assert covered["flow"] == 0
    assert covered["speed"] == pytest.approx(100)
    assert covered["low-flow"] == 1
    assert covered["pressure"] == pytest.approx(900)


def test_the_controller_never_turns_slower_than_its_least_speed() -> None:
    point = controlled(FAN, Path(0.1, 0.0001), wanted=20.0, density=1.0, least_speed=0.3)
    assert point.speed == pytest.approx(0.3)
    assert point.flow > 20


def test_run_time_is_energy_over_power() -> None:
    # 37 Wh, of which 95 % until the alarm, at 20 degrees.
    now = UNIT.at(_now())
    assert now["minutes"] == pytest.approx(60 * 37 * 0.95 / now["power"])
    assert UNIT.at(_now(temperature=-10))["minutes"] == pytest.approx(
        60 * 37 * 0.75 * 0.95 / UNIT.at(_now(temperature=-10))["power"]
    )


def test_a_battery_at_its_alarm_has_no_minutes_left_until_it() -> None:
    empty = UNIT.at(_now(charge=5))
    assert empty["minutes"] == 0
    assert empty["low-battery"] == 1


def test_between_two_temperatures_the_battery_gives_what_lies_between() -> None:
    assert UNIT.battery.share_at(10) == pytest.approx(0.925)
    assert UNIT.battery.share_at(-40) == 0.75
    assert UNIT.battery.share_at(60) == 1.0


def test_filter_resistance_is_laminar_and_an_opening_resists_with_its_inverse_square() -> None:
    path = UNIT.path(_now(load=50, opening=50))
    assert path.laminar == pytest.approx((0.9 + 3.2) / 2)
    assert path.turbulent == pytest.approx(0.0075 * 4)
    assert math.isinf(UNIT.path(_now(opening=0)).turbulent)

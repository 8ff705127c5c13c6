"""The demo's calculators against values from law, standards, another library and sums on paper.

Sources: 42 CFR 84.175(b) and the test flows of 115 and 170 L/min (2020), with the 4 and 6 ft3/min that the older text
of Part 84 printed beside them; foot = 0.3048 m exactly (international yard and pound agreement, 1959), so that 1 ft3 =
28.316846592 L; 29 CFR 1910.134(d)(3)(i)(B), maximum use concentration; Table 1 of the same, and HSG53 (2013), for the
factors 25 and 20. Effective protection when worn for a part of the time, run time, packs and the load of a filter have
no published table of their own: each value below is worked out on paper in the comment beside it.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

import pint
import pytest

from journeybook.content.arithmetic import decimal_text
from journeybook.content.calculations import working
from journeybook.content.loader import load_course
from journeybook.content.model import Course
from journeybook.content.postfix import Stopped

ROOT = Path(__file__).parents[2]
PROFILES = ("us", "uk")


@pytest.fixture(scope="module")
def courses() -> dict[str, Course]:
    found: dict[str, Course] = {}
    for profile in PROFILES:
        course, problems = load_course(ROOT, "powered-respirator", profile=profile)
        assert course is not None, problems
        found[profile] = course
    return found


def worked(course: Course, calculator: str, **inputs: str) -> dict[str, Fraction | Stopped]:
    """Every result; an input that is not named stays at its start."""
    sheets: dict[str, Any] = {"kit": course.kit.values, "profile": course.profile.values}
    ready = working(course.calculators[calculator], sheets)
    assert set(inputs) <= set(ready.ranges)
    return ready.results(ready.starts | {name: Fraction(text) for name, text in inputs.items()})


def shown(course: Course, calculator: str, result: str, **inputs: str) -> str:
    """A result as the page shows it."""
    places = {one.name: one.places for one in course.calculators[calculator].results}
    value = worked(course, calculator, **inputs)[result]
    assert isinstance(value, Fraction)
    return decimal_text(value, places[result])


@pytest.mark.parametrize("profile", PROFILES)
@pytest.mark.parametrize(
    ("flow", "hourly", "cubic_feet"),
    [
        # 42 CFR 84: 115 and 170 L/min. x 60 / 1000, and / 28.316846592.
        ("115", "6.9", "4.061"),
        ("170", "10.2", "6.003"),
        ("180", "10.8", "6.357"),
        ("0", "0", "0"),
    ],
)
def test_flows_in_other_units(
    courses: dict[str, Course], profile: str, flow: str, hourly: str, cubic_feet: str
) -> None:
    assert shown(courses[profile], "flow-units", "hourly", flow=flow) == hourly
    assert shown(courses[profile], "flow-units", "cubic_feet", flow=flow) == cubic_feet


@pytest.mark.parametrize("profile", PROFILES)
def test_flows_in_other_units_are_exactly_pints(courses: dict[str, Course], profile: str) -> None:
    units = pint.UnitRegistry(non_int_type=Fraction)
    for flow in (115, 170, 180):
        theirs = units.Quantity(Fraction(flow), "liter/minute")
        found = worked(courses[profile], "flow-units", flow=str(flow))
        assert found["hourly"] == theirs.to("meter**3/hour").magnitude
        assert found["cubic_feet"] == theirs.to("foot**3/minute").magnitude


def test_a_rounded_number_turned_back_is_too_low(courses: dict[str, Course]) -> None:
    # Old Part 84 prints 170 L (6 ft3): 6 x 28.316846592 = 169.9 L/min, which is 0.1 under the minimum.
    assert shown(courses["us"], "flow-units", "over", flow="169.9") == "-0.1"


@pytest.mark.parametrize("profile", PROFILES)
@pytest.mark.parametrize(
    ("factor", "share", "left"),
    [
        # One over (share over factor, plus the share without it).
        ("20", "100", "20"),
        ("20", "95", "10.3"),  # 10.26
        ("20", "90", "6.9"),  # 6.90
        ("25", "100", "25"),
        ("25", "95", "11.4"),  # 11.36
        ("25", "90", "7.4"),  # 7.35
        ("25", "0", "1"),
        ("1", "95", "1"),
    ],
)
def test_protection_left_over_the_whole_time(
    courses: dict[str, Course], profile: str, factor: str, share: str, left: str
) -> None:
    assert shown(courses[profile], "wear-time-protection", "left", factor=factor, share=share) == left


@pytest.mark.parametrize(("profile", "factor", "left"), [("us", 25, "11.4"), ("uk", 20, "10.3")])
def test_it_starts_with_the_factor_of_the_profile(
    courses: dict[str, Course], profile: str, factor: int, left: str
) -> None:
    # US: 29 CFR 1910.134 Table 1, loose-fitting, 25. UK: HSG53, TH2, 20.
    course = courses[profile]
    value = course.profile.values["factor-used"].value
    assert value == str(factor)
    assert shown(course, "wear-time-protection", "left") == left
    # The tables of the lesson are the same sum.
    for share in ("99", "98", "95", "90", "80"):
        printed = course.profile.values[f"factor-worn-{share}"].value
        assert shown(course, "wear-time-protection", "left", share=share) == printed


@pytest.mark.parametrize("profile", PROFILES)
@pytest.mark.parametrize(
    ("factor", "limit", "idlh", "most"),
    [
        ("25", "0.005", "15", "0.125"),  # Cr(VI), 25 x 5 = 125 micrograms
        ("20", "0.05", "500", "1"),  # manganese respirable, 20 x 0.05
        ("40", "0.05", "500", "2"),  # 40 x 0.05
        ("25", "5", "500", "125"),  # manganese, 25 x 5
        (
            "25",
            "30",
            "500",
            "500",
        ),  # 25 x 30 = 750, and never more than the level that is immediately dangerous
    ],
)
def test_the_most_that_a_factor_covers(
    courses: dict[str, Course], profile: str, factor: str, limit: str, idlh: str, most: str
) -> None:
    found = shown(
        courses[profile], "maximum-use-concentration", "most", factor=factor, limit=limit, idlh=idlh
    )
    assert found == most


RUN_TIME = {"rated": "6", "age": "80", "cold": "90", "reserve": "15", "charge": "3.5"}


@pytest.mark.parametrize("profile", PROFILES)
def test_run_time_packs_and_spares(courses: dict[str, Course], profile: str) -> None:
    course = courses[profile]
    # 6 x 0.8 x 0.9 x 0.85 = 3.672; 7 / 3.672 = 1.906, rounded up 2, of which 1 spare.
    assert worked(course, "batteries-for-a-shift", **RUN_TIME)["usable"] == Fraction("3.672")
    assert shown(course, "batteries-for-a-shift", "packs", **RUN_TIME, wear="7") == "2"
    assert shown(course, "batteries-for-a-shift", "spare", **RUN_TIME, wear="7") == "1"
    # 8 / 3.672 = 2.179, rounded up 3.
    assert shown(course, "batteries-for-a-shift", "packs", **RUN_TIME, wear="8") == "3"
    # 10 x (1 + 3.5 / 3.672) = 19.53, rounded up 20.
    assert shown(course, "batteries-for-a-shift", "fleet", **RUN_TIME, users="10") == "20"


LOADING = {"conc": "5", "flow": "180", "hours": "6", "capacity": "2000"}


@pytest.mark.parametrize("profile", PROFILES)
def test_filters_to_order_for_a_year(courses: dict[str, Course], profile: str) -> None:
    course = courses[profile]
    # 5 mg/m3 x 10.8 m3/h x 6 h = 324 mg; 2000 / 324 = 6.17, so 6 shifts; 230 / 6 = 38.3, rounded up 39.
    assert worked(course, "filters-a-year", **LOADING)["load"] == 324
    assert shown(course, "filters-a-year", "order", **LOADING, shifts="230") == "39"
    # 50 mg/m3 brings 3240 mg a shift: two filters for each, 460 in all.
    heavy = LOADING | {"conc": "50"}
    assert shown(course, "filters-a-year", "order", **heavy, shifts="230") == "460"


@pytest.mark.parametrize("profile", PROFILES)
def test_what_a_calculator_is_not_for_is_said_on_it(courses: dict[str, Course], profile: str) -> None:
    cautions = {name: one.caution.lower() for name, one in courses[profile].calculators.items()}
    assert "never a change interval" in cautions["filters-a-year"]
    assert "gas" in cautions["filters-a-year"]
    assert "never chooses a respirator" in cautions["maximum-use-concentration"]
    assert "no permission" in cautions["wear-time-protection"]
    assert all(cautions.values())

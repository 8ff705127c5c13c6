"""Sources that exist in the builds for some profiles only."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from journeybook.content.loader import load_course
from journeybook.content.model import Course
from journeybook.diagnostics.problem import Problem

BASE = Path(__file__).parents[2] / "faults" / "base"
COURSE = Path("course_src/pillar-drill")

TWO_COUNTRIES = """\
sources:
  - {id: drill-manual, title: "Instructions for the example drill", status: read}
  - {id: common-practice, title: "What the trade does", status: common practice}
  - {id: guard-rule, title: "Rules of the fitting bay", status: reported, only: [uk]}
  - {id: shop-rule, title: "Rules of the shop", status: reported, only: us}
  - {id: both-rule, title: "Rules of both", status: reported, only: [us, uk]}
"""
US = """\
title: "United States"
values:
  - {id: guard-duty, label: "The duty to guard", value: "as the shop's rules say", source: [shop-rule, both-rule]}
"""


@pytest.fixture
def site(tmp_path: Path) -> Path:
    shutil.copytree(BASE, tmp_path, dirs_exist_ok=True)
    write(tmp_path, "sources.yml", TWO_COUNTRIES)
    write(tmp_path, "profiles/us.yml", US)
    for path in (*(tmp_path / COURSE).rglob("*.yml"), *(tmp_path / "quizzes").rglob("*.yml")):
        text = path.read_text(encoding="utf-8")
        text = text.replace("source: [guard-rule]", "source: [shop-rule, guard-rule]")
        text = text.replace("source: [kit, common-practice]", "source: [guard-rule, kit, shop-rule]")
        text = text.replace("source: common-practice\n", "source: [shop-rule, common-practice]\n")
        path.write_text(text, encoding="utf-8")
    return tmp_path


def write(site: Path, name: str, text: str) -> None:
    (site / COURSE / name).write_text(text, encoding="utf-8")


def change(site: Path, name: str, old: str, new: str) -> None:
    path = site / COURSE / name
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1, text
    path.write_text(text.replace(old, new), encoding="utf-8")


def course_for(site: Path, profile: str) -> Course:
    course, problems = load_course(site, "pillar-drill", profile=profile)
    assert course is not None, problems
    assert problems == []
    return course


def problems_of(site: Path, profile: str = "uk") -> list[Problem]:
    return load_course(site, "pillar-drill", profile=profile)[1]


@pytest.mark.parametrize(
    ("profile", "there"),
    [
        ("uk", ["drill-manual", "common-practice", "guard-rule", "both-rule"]),
        ("us", ["drill-manual", "common-practice", "shop-rule", "both-rule"]),
    ],
)
def test_a_course_has_the_sources_of_its_profile_only(site: Path, profile: str, there: list[str]) -> None:
    assert list(course_for(site, profile).sources) == there


def test_a_source_of_another_profile_drops_out_of_every_list(site: Path) -> None:
    course = course_for(site, "us")
    assert course.lessons[1].sources == ("kit",)
    assert course.questions["guard-03"].sources == ("shop-rule",)
    assert course.critical_facts[0].sources == ("kit", "shop-rule")
    assert course.validity.sources == ("shop-rule", "common-practice")
    british = course_for(site, "uk")
    assert british.lessons[1].sources == ("kit", "guard-rule")
    assert british.questions["guard-03"].sources == ("guard-rule",)
    assert british.critical_facts[0].sources == ("guard-rule", "kit")
    assert british.validity.sources == ("common-practice",)


def test_a_sheets_value_may_rest_on_several_sources(site: Path) -> None:
    assert course_for(site, "us").profile.values["guard-duty"].sources == ("shop-rule", "both-rule")


@pytest.mark.parametrize("profile", ["uk", "us"])
def test_a_profile_without_a_source_is_told_of_whichever_is_built(site: Path, profile: str) -> None:
    change(site, "sources.yml", "only: us}", "only: uk}")
    change(site, "profiles/us.yml", "[shop-rule, both-rule]", "both-rule")
    problems = problems_of(site, profile)
    assert {(problem.code, problem.place.trail) for problem in problems} == {
        ("C035", "question check-02"),
        ("C035", "question guard-03"),
        ("C035", "question guard-06"),
    }
    assert {problem.message for problem in problems} == {
        "The question has no source in the profile `us`: `shop-rule`, `guard-rule` are limited to other profiles."
    }
    assert [place.trail for place in problems[0].also_at] == ["source shop-rule", "source guard-rule"]


def test_validity_needs_a_source_that_remains(site: Path) -> None:
    change(site, "course.yml", "source: [shop-rule, common-practice]", "source: guard-rule")
    (problem,) = problems_of(site)
    assert (problem.code, problem.place.line) == ("C035", 11)
    assert problem.message == (
        "The validity has no source in the profile `us`: `guard-rule` is limited to other profiles."
    )


def test_a_value_of_a_profile_that_is_not_built_is_looked_at_too(site: Path) -> None:
    change(site, "profiles/us.yml", "[shop-rule, both-rule]", "[both-rule, guard-rule]")
    (problem,) = problems_of(site, "uk")
    assert problem.code == "C036"
    assert problem.message == "The source `guard-rule` does not exist in this profile, `us`."
    assert problem.place.file.endswith("profiles/us.yml")


def test_the_kit_sheet_rests_on_sources_of_every_profile(site: Path) -> None:
    change(site, "kit.yml", "source: drill-manual", "source: [both-rule, guard-rule]")
    for profile in ("uk", "us"):
        found = [problem for problem in problems_of(site, profile) if problem.code == "C036"]
        assert [problem.message for problem in found] == [
            "The source `guard-rule` does not exist in the profile `us`, which uses this kit sheet too."
        ]


def test_a_misspelt_profile_is_one_fault_and_hides_nothing(site: Path) -> None:
    change(site, "sources.yml", "only: us}", "only: usa}")
    (problem,) = problems_of(site)
    assert (problem.code, problem.mend) == ("C028", "Write `us`, or add profiles/usa.yml.")


def test_only_names_at_least_one_profile(site: Path) -> None:
    change(site, "sources.yml", "only: [us, uk]", "only: []")
    (problem,) = problems_of(site)
    assert problem.code == "C011"

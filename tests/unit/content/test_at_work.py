"""Practicals, job cards and duties as they are read."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from journeybook.content.load_memo import LoadMemo
from journeybook.content.loader import load_course
from journeybook.content.model import CardBlockKind, Course

BASE = Path(__file__).parents[2] / "faults" / "base"
COURSE = Path("course_src/pillar-drill")
FAR = """\
title: "The far bay"
values:
  - {id: guard-duty, label: "The duty to guard", value: "as the far bay says", source: guard-rule}
"""
DUTIES_OF_FAR = """\
duties:
  - id: nobody-reaches-in
    text: "Nobody reaches in."
    source: far-rule
    covered-by:
      lessons: [set-the-guard]
      practicals: [isolate]
"""


@pytest.fixture
def site(tmp_path: Path) -> Path:
    shutil.copytree(BASE, tmp_path, dirs_exist_ok=True)
    return tmp_path


@pytest.fixture
def two_bays(site: Path) -> Path:
    """The course with a second profile, a source that only it has, and duties of its own."""
    (site / COURSE / "profiles/far.yml").write_text(FAR, encoding="utf-8")
    (site / COURSE / "duties/far.yml").write_text(DUTIES_OF_FAR, encoding="utf-8")
    sources = site / COURSE / "sources.yml"
    text = sources.read_text(encoding="utf-8")
    sources.write_text(
        text + '  - {id: far-rule, title: "Rules of the far bay", status: reported, only: far}\n',
        encoding="utf-8",
    )
    return site


def course_for(site: Path, profile: str = "uk", memo: LoadMemo | None = None) -> Course:
    course, problems = load_course(site, "pillar-drill", profile=profile, memo=memo)
    assert course is not None, problems
    assert problems == []
    return course


def test_a_practical_is_called_like_its_file_and_keeps_its_steps_in_order() -> None:
    practical = course_for(BASE).practicals["prove-the-guard"]
    assert practical.id == "prove-the-guard"
    assert [step.id for step in practical.steps] == ["isolate", "close-the-gap", "name-parts"]
    assert [step.critical for step in practical.steps] == [True, True, False]
    assert practical.sources == ("kit", "guard-rule")


def test_a_step_is_found_by_its_id_with_its_practical() -> None:
    course = course_for(BASE)
    practical, step = course.practical_steps["isolate"]
    assert practical is course.practicals["prove-the-guard"]
    assert step is practical.steps[0]


def test_a_job_card_holds_every_kind_of_block() -> None:
    course = course_for(BASE)
    kinds = {block.kind for card in course.job_cards.values() for block in card.body}
    assert kinds == set(CardBlockKind)


def test_rows_are_listed_or_counted() -> None:
    tables = [block.table for block in course_for(BASE).job_cards["before-you-drill"].body if block.table]
    assert [table.rows for table in tables] == [(("Bay 1", "", ""), ("Bay 2", "", "")), ((), (), ())]


def test_a_tag_says_so() -> None:
    cards = course_for(BASE).job_cards
    assert [name for name, card in cards.items() if card.tag] == ["out-of-use"]


def test_a_card_that_is_a_record_says_how_long_it_is_kept(two_bays: Path) -> None:
    file = two_bays / COURSE / "job-cards/before-you-drill.yml"
    file.write_text(
        'keep: "{kit.guard-gap.number} years."\n' + file.read_text(encoding="utf-8"), encoding="utf-8"
    )
    cards = course_for(two_bays).job_cards
    assert {name: card.keep for name, card in cards.items()} == {
        "before-you-drill": "{kit.guard-gap.number} years.",
        "out-of-use": "",
    }


def test_a_build_has_the_duties_of_its_own_profile_only(two_bays: Path) -> None:
    here, there = course_for(two_bays).duties, course_for(two_bays, "far").duties
    assert here is not None
    assert there is not None
    assert (here.id, len(here.duties)) == ("uk", 2)
    assert (there.id, there.duties[0].sources) == ("far", ("far-rule",))


def test_a_course_whose_profile_lists_no_duties_has_none(two_bays: Path) -> None:
    (two_bays / COURSE / "duties/far.yml").unlink()
    assert course_for(two_bays, "far").duties is None


def test_a_source_of_another_profile_drops_out_of_a_step_and_out_of_a_card(two_bays: Path) -> None:
    for path, old in (("practicals/prove-the-guard.yml", "[kit]"), ("job-cards/out-of-use.yml", "[kit, ")):
        file = two_bays / COURSE / path
        text = file.read_text(encoding="utf-8")
        assert old in text
        file.write_text(text.replace(old, old.rstrip("] ,") + ", far-rule" + old[4:]), encoding="utf-8")
    here, there = course_for(two_bays), course_for(two_bays, "far")
    step = "close-the-gap"
    assert here.practical_steps[step][1].sources == ("kit",)
    assert there.practical_steps[step][1].sources == ("kit", "far-rule")
    assert here.job_cards["out-of-use"].sources == ("kit", "guard-rule")
    assert there.job_cards["out-of-use"].sources == ("kit", "far-rule", "guard-rule")


def test_what_is_unchanged_is_the_same_object_in_the_next_load(two_bays: Path) -> None:
    memo = LoadMemo()
    before = course_for(two_bays, memo=memo)
    card = two_bays / COURSE / "job-cards/out-of-use.yml"
    card.write_text(card.read_text(encoding="utf-8").replace("OUT OF USE", "STOP"), encoding="utf-8")
    after = course_for(two_bays, memo=memo)
    assert after.job_cards["out-of-use"].title == "STOP"
    assert after.job_cards["before-you-drill"] is before.job_cards["before-you-drill"]
    assert after.practicals["prove-the-guard"] is before.practicals["prove-the-guard"]
    assert after.duties is before.duties

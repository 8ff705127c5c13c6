"""What a release keeps of a job card."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any, cast

from journeybook.content.loader import load_course
from journeybook.marking.shown_at_work import shown_at_work

BASE = Path(__file__).parents[2] / "faults" / "base"


def _cards(**change: str) -> dict[str, Any]:
    course, _ = load_course(BASE, "pillar-drill", profile="uk")
    assert course is not None
    card = replace(course.job_cards["before-you-drill"], **change)
    changed = replace(course, job_cards={"before-you-drill": card})
    return cast("dict[str, Any]", shown_at_work(changed, lambda text: text)["job-cards"])


def test_a_card_that_is_no_record_says_nothing_of_keeping_so_that_older_digests_stand() -> None:
    assert set(_cards()["before-you-drill"]["texts"]["en"]) == {"title", "when", "body"}


def test_how_long_a_record_is_kept_is_part_of_the_release() -> None:
    assert _cards(keep="Two years.")["before-you-drill"]["texts"]["en"]["keep"] == "Two years."

from __future__ import annotations

import os
import shutil
import time
from pathlib import Path
from types import SimpleNamespace
from typing import cast

import pytest

from journeybook.content.load_memo import LoadMemo
from journeybook.content.loader import load_courses
from journeybook.content.model import Course

BASE = Path(__file__).parents[2] / "faults" / "base"
BANK = Path("quizzes") / "pillar-drill" / "guard.yml"


@pytest.fixture
def site(tmp_path: Path) -> Path:
    shutil.copytree(BASE, tmp_path / "site")
    return tmp_path / "site"


def loaded(site: Path, memo: LoadMemo, profile: str = "uk") -> Course:
    courses, problems = load_courses(site, ["pillar-drill"], profile=profile, memo=memo)
    assert courses, problems
    return courses[0]


def append(path: Path, text: str) -> None:
    path.write_text(path.read_text(encoding="utf-8") + text, encoding="utf-8")


def parts_of(course: Course) -> dict[str, list[object]]:
    """By the file they come from: everything that a later load must give back as the same object."""
    found: dict[str, list[object]] = {}
    figures = [*course.figures.values(), *course.terms.values(), *course.sources.values()]
    values = [*course.kit.values.values(), *course.profile.values.values()]
    for thing in [*course.lessons, *course.banks, *course.questions.values(), *figures, *values]:
        found.setdefault(thing.place.file, []).append(thing)
    return found


def test_a_second_load_gives_the_same_objects(site: Path) -> None:
    memo = LoadMemo()
    first, second = parts_of(loaded(site, memo)), parts_of(loaded(site, memo))
    assert first.keys() == second.keys()
    assert len(first) > 8
    for file, things in first.items():
        assert all(one is other for one, other in zip(things, second[file], strict=True)), file


def test_after_an_edit_only_the_edited_file_gives_new_objects(site: Path) -> None:
    memo = LoadMemo()
    first = parts_of(loaded(site, memo))
    edited = BANK.as_posix()
    append(site / edited, "# a word to whoever reads this file\n")
    second = parts_of(loaded(site, memo))
    for file, things in first.items():
        same = [one is other for one, other in zip(things, second[file], strict=True)]
        assert not any(same) if file == edited else all(same), file


def test_what_lost_the_sources_of_another_profile_is_the_same_object_too(site: Path) -> None:
    course = site / "course_src" / "pillar-drill"
    shutil.copy(course / "profiles" / "uk.yml", course / "profiles" / "us.yml")
    append(course / "sources.yml", '  - {id: there, title: "There", status: common practice, only: [us]}\n')
    for path in (
        course / "modules" / "10-guard" / "10-parts.yml",
        site / "quizzes" / "pillar-drill" / "check.yml",
    ):
        text = path.read_text(encoding="utf-8")
        path.write_text(text.replace("source: [kit]", "source: [kit, there]"), encoding="utf-8")
    memo = LoadMemo()
    first, second = loaded(site, memo), loaded(site, memo)
    assert first.lessons[0].sources == ("kit",)
    assert all(one is other for one, other in zip(first.lessons, second.lessons, strict=True))
    assert all(one is other for one, other in zip(first.banks, second.banks, strict=True))


def test_a_fault_and_its_mending_are_both_seen(site: Path) -> None:
    memo = LoadMemo()
    loaded(site, memo)
    bank = site / BANK
    sound = bank.read_text(encoding="utf-8")
    bank.write_text(sound.replace("outcome: ", "outcome: not-", 1), encoding="utf-8")
    courses, problems = load_courses(site, ["pillar-drill"], profile="uk", memo=memo)
    assert not courses
    assert "C031" in {problem.code for problem in problems}
    bank.write_text(sound, encoding="utf-8")
    assert load_courses(site, ["pillar-drill"], profile="uk", memo=memo)[1] == []


def test_a_memo_forgets_files_that_are_gone(site: Path) -> None:
    memo = LoadMemo()
    extra = site / "course_src" / "pillar-drill" / "profiles" / "us.yml"
    shutil.copy(extra.with_name("uk.yml"), extra)
    loaded(site, memo)
    held = len(memo)
    extra.unlink()
    loaded(site, memo)
    assert len(memo) == held - 2  # its bytes, and what was made of them


def seen(age_in_seconds: float, size: int = 2) -> os.stat_result:
    at = time.time_ns() - int(age_in_seconds * 1e9)
    marks = SimpleNamespace(st_size=size, st_mtime_ns=at, st_ctime_ns=at, st_ino=7, st_dev=1)
    return cast("os.stat_result", marks)


def read_twice(path: Path, look: os.stat_result, later: os.stat_result) -> bytes:
    """What a memo gives for a file whose bytes have changed, as far as its looks tell."""
    memo = LoadMemo()
    path.write_bytes(b"is")
    with memo.one_round():
        memo.bytes_of(str(path), look)
    path.write_bytes(b"at")
    with memo.one_round():
        return memo.bytes_of(str(path), later)


def test_a_file_that_looks_as_it_did_long_ago_is_not_opened(tmp_path: Path) -> None:
    look = seen(60)
    assert read_twice(tmp_path / "a.yml", look, look) == b"is"


def test_a_file_written_just_before_it_was_read_is_opened_again(tmp_path: Path) -> None:
    look = seen(0.5)
    assert read_twice(tmp_path / "a.yml", look, look) == b"at"


@pytest.mark.parametrize("later", [seen(30), seen(60, size=3)])
def test_a_file_that_looks_otherwise_is_opened_again(tmp_path: Path, later: os.stat_result) -> None:
    assert read_twice(tmp_path / "a.yml", seen(60), later) == b"at"

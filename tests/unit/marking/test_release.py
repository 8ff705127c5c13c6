"""A release is frozen for ever, and what would break the promise is refused with its reason."""

from __future__ import annotations

import hashlib
import json
from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import pytest
from pillar_drill import BANK, HEIGHT, HERE, ORDER, PRACTICE, SEVERAL, course, isolate

from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Level, Place
from journeybook.marking import canonical
from journeybook.marking.compiled import compile_course
from journeybook.marking.release import compare_with_release, last_release, release
from journeybook.marking.release_shelf import read_shelf, write_release

NOW = datetime(2026, 11, 24, 9, 30, 15, tzinfo=UTC)
LATER = datetime(2027, 2, 1, 8, tzinfo=UTC)


def refused(of: Any, folder: Path, problems: Any = ()) -> list[tuple[str, str]]:
    made, found = release(of, folder, NOW, problems)
    assert made is None
    assert any(problem.level is Level.FAULT for problem in found)
    return [(problem.code, problem.message) for problem in found]


def files(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


def test_a_release_keeps_the_compiled_course_its_digests_and_when(tmp_path: Path) -> None:
    made, problems = release(course(), tmp_path, NOW)
    compiled = compile_course(course())
    assert made is not None
    assert problems == []
    kept = files(tmp_path)
    assert set(kept) == {f"releases/1.0/uk/{name}.json" for name in ("compiled", "digests", "release")}
    assert kept["releases/1.0/uk/compiled.json"] == compiled.data
    assert kept["releases/1.0/uk/digests.json"] == compiled.digests
    assert json.loads(kept["releases/1.0/uk/release.json"]) == {
        "format": "journeybook release 1",
        "version": "1.0",
        "profile": "uk",
        "digest": compiled.digest,
        "released": "2026-11-24T09:30:15Z",
        "questions": sorted(course().questions),
    }


def test_the_last_release_is_read_back_with_its_keys(tmp_path: Path) -> None:
    release(course(), tmp_path, NOW)
    release(course(version="1.1"), tmp_path, LATER)
    found = last_release(tmp_path, "uk")
    assert found is not None
    assert found.version == "1.1"
    assert found.keys["isolate-1"] == {"kind": "choice", "options": ["a", "b", "c"], "right": "a"}


def test_there_is_no_last_release_before_the_first_or_for_another_profile(tmp_path: Path) -> None:
    assert last_release(tmp_path, "uk") is None
    release(course(), tmp_path, NOW)
    assert last_release(tmp_path, "us") is None


def test_releasing_the_same_contents_again_changes_nothing(tmp_path: Path) -> None:
    release(course(), tmp_path, NOW)
    before = files(tmp_path)
    made, problems = release(course(), tmp_path, LATER)
    assert made is not None
    assert made.released == "2026-11-24T09:30:15Z"
    assert problems == []
    assert files(tmp_path) == before


def test_a_version_is_never_given_to_other_contents(tmp_path: Path) -> None:
    release(course(), tmp_path, NOW)
    before = files(tmp_path)
    first, second = compile_course(course()).digest, compile_course(replace(course(), title="Other")).digest
    assert refused(replace(course(), title="Other"), tmp_path) == [
        (
            "R003",
            "Version 1.0 was released on 2026-11-24 with other contents "
            f"({first[:16]}…, now {second[:16]}…).",
        )
    ]
    assert files(tmp_path) == before


def test_a_course_with_something_to_mend_is_not_released(tmp_path: Path) -> None:
    doubt = warning("S016", BANK, "This is unclear.", "Clear it up.")
    assert refused(course(), tmp_path, [doubt]) == [
        ("R001", "One thing is still to be mended; the first is S016.")
    ]
    assert files(tmp_path) == {}


def test_what_comparing_with_the_last_release_found_is_not_counted_twice(tmp_path: Path) -> None:
    made, _ = release(course(), tmp_path, NOW, [warning("R005", BANK, "Marked in another way.", "Look.")])
    assert made is not None


def test_a_part_marked_as_draft_keeps_the_course_unreleased(tmp_path: Path) -> None:
    drafted = course(questions=(isolate(1), replace(HEIGHT, draft=True), replace(ORDER, draft=True)))
    assert refused(drafted, tmp_path) == [("R001", "2 parts of the course are marked as draft.")]


def test_a_course_that_nobody_approved_is_not_released(tmp_path: Path) -> None:
    unapproved = replace(course(), approved=None)
    assert refused(unapproved, tmp_path) == [("R002", "Nobody is named as having approved the course.")]


def test_a_question_of_the_last_release_may_retire_but_not_vanish(tmp_path: Path) -> None:
    release(course(questions=(isolate(1), HEIGHT, SEVERAL)), tmp_path, NOW)
    gone = course(version="1.1", questions=(isolate(1), HEIGHT))
    assert refused(gone, tmp_path) == [("R004", "Question guard-several of version 1.0 is gone.")]
    retired = replace(SEVERAL, retired=date(2026, 12, 1))
    made, problems = release(course(version="1.1", questions=(isolate(1), HEIGHT, retired)), tmp_path, LATER)
    assert problems == []
    assert made is not None
    assert made.questions == ("guard-several", "height-number", "isolate-1")


def test_a_key_that_changed_under_the_same_id_is_a_warning_that_goes_with_the_release(tmp_path: Path) -> None:
    release(course(questions=(isolate(1), HEIGHT)), tmp_path, NOW)
    changed = course(version="1.1", questions=(isolate(1), replace(HEIGHT, right="9")))
    made, problems = release(changed, tmp_path, LATER)
    assert made is not None
    assert [(problem.code, problem.level, problem.message) for problem in problems] == [
        ("R005", Level.WARNING, "Question height-number is marked in another way than in version 1.0.")
    ]


def test_other_words_for_the_same_thing_are_no_change_of_meaning(tmp_path: Path) -> None:
    release(course(questions=(isolate(1), PRACTICE)), tmp_path, NOW)
    reworded = course(version="1.1", questions=(isolate(1), replace(PRACTICE, ask="What holds the guard?")))
    assert compare_with_release(reworded, compile_course(reworded), last_release(tmp_path, "uk")) == []


def test_a_damaged_release_is_named_and_nothing_is_released_over_it(tmp_path: Path) -> None:
    release(course(), tmp_path, NOW)
    damaged = tmp_path / "releases" / "1.0" / "uk" / "compiled.json"
    damaged.write_bytes(damaged.read_bytes().replace(b"guard", b"GUARD", 1))
    assert refused(course(version="1.1"), tmp_path) == [
        ("R006", "An earlier release cannot be relied on: its contents are not those that were released.")
    ]
    assert last_release(tmp_path, "uk") is None


def test_a_damaged_release_is_named_as_seen_from_mkdocs_yml_and_none_of_it_is_shown(tmp_path: Path) -> None:
    release(course(), tmp_path, NOW)
    (tmp_path / "releases/1.0/uk/release.json").write_bytes(b"{}")
    _, (problem,) = release(course(version="1.1"), tmp_path, NOW)
    assert problem.place == Place(file="course_src/pillar-drill/releases/1.0/uk/release.json", length=0)


def test_a_release_that_was_opened_and_saved_by_an_editor_is_damaged(tmp_path: Path) -> None:
    release(course(), tmp_path, NOW)
    record = tmp_path / "releases" / "1.0" / "uk" / "release.json"
    record.write_bytes(record.read_bytes() + b"\n")
    assert refused(course(version="1.1"), tmp_path) == [
        ("R006", "An earlier release cannot be relied on: it was changed (form).")
    ]


def test_a_version_that_cannot_name_a_folder_is_refused(tmp_path: Path) -> None:
    assert refused(course(version="../1"), tmp_path) == [
        (
            "R007",
            "The course cannot be compiled: “../1” cannot name a folder; "
            "use letters, digits, dots and dashes.",
        )
    ]


def test_a_course_that_cannot_be_worked_out_is_refused(tmp_path: Path) -> None:
    broken = course(questions=(replace(HEIGHT, right="1 / 0"),))
    assert refused(broken, tmp_path) == [
        ("R007", "The course cannot be compiled: question height-number: 1 / 0: It divides by zero.")
    ]


def test_profiles_of_one_version_stand_side_by_side(tmp_path: Path) -> None:
    release(course(), tmp_path, NOW)
    elsewhere = replace(course(), profile=replace(course().profile, id="us"))
    made, problems = release(elsewhere, tmp_path, LATER)
    assert made is not None
    assert problems == []
    assert [(each.version, each.profile) for each in read_shelf(tmp_path)] == [("1.0", "uk"), ("1.0", "us")]


def test_problems_of_the_course_as_a_whole_stand_at_its_own_file(tmp_path: Path) -> None:
    _, found = release(replace(course(), approved=None), tmp_path, NOW)
    assert [problem.place for problem in found] == [HERE]


def test_a_version_that_differs_only_in_capitals_is_not_released_over_the_other(tmp_path: Path) -> None:
    release(course(version="1.0-a"), tmp_path, NOW)
    before = files(tmp_path)
    ((code, message),) = refused(course(version="1.0-A"), tmp_path)
    assert code == "R003"
    assert message.startswith("Version 1.0-a was released on 2026-11-24")
    assert files(tmp_path) == before


def test_a_release_is_never_written_over(tmp_path: Path) -> None:
    made, _ = release(course(), tmp_path, NOW)
    assert made is not None
    with pytest.raises(FileExistsError):
        write_release(tmp_path, made, compile_course(course()))


def test_a_retired_question_stays_on_the_list_and_cannot_be_deleted_later(tmp_path: Path) -> None:
    whole = course()
    bank = whole.banks[0]
    (first, *others) = bank.questions
    retired = replace(whole, version="1.1", banks=(replace(bank, questions=(
        replace(first, retired=date(2026, 12, 1)), *others
    )), *whole.banks[1:]))  # fmt: skip
    made, _ = release(retired, tmp_path, NOW)
    assert made is not None
    assert first.id in made.questions
    without = replace(whole, version="1.2", banks=(replace(bank, questions=tuple(others)), *whole.banks[1:]))
    assert ("R004", f"Question {first.id} of version 1.1 is gone.") in refused(without, tmp_path)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"version": 1}, "a member is missing or of the wrong shape"),
        ({"questions": [7]}, "a member is missing or of the wrong shape"),
        ({"questions": "isolate-1"}, "a member is missing or of the wrong shape"),
        ({"version": "2.0"}, "it is of version 2.0 for uk"),
    ],
)
def test_a_release_file_that_was_changed_is_not_relied_on(
    tmp_path: Path, change: dict[str, Any], said: str
) -> None:
    release(course(), tmp_path, NOW)
    path = tmp_path / "releases/1.0/uk/release.json"
    path.write_bytes(canonical.write(json.loads(path.read_bytes()) | change))
    ((code, message),) = refused(course(version="1.1"), tmp_path)
    assert (code, message) == ("R006", f"An earlier release cannot be relied on: {said}.")
    assert last_release(tmp_path, "uk") is None


def test_a_release_whose_files_were_both_replaced_is_not_relied_on(tmp_path: Path) -> None:
    release(course(), tmp_path, NOW)
    folder = tmp_path / "releases/1.0/uk"
    (folder / "compiled.json").write_bytes(b"[]")
    record = json.loads((folder / "release.json").read_bytes())
    record["digest"] = hashlib.sha256(b"[]").hexdigest()
    (folder / "release.json").write_bytes(canonical.write(record))
    ((code, message),) = refused(course(version="1.1"), tmp_path)
    assert (code, message) == ("R006", "An earlier release cannot be relied on: it is not a compiled course.")

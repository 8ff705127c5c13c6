"""Where the private file of a sitting may not lie: anywhere that is published or copied."""

from __future__ import annotations

from pathlib import Path

import pytest

from journeybook.sittings.private_place import refuse_place
from journeybook.sittings.sitting import SittingRefused


def why(folder: Path, *homes: Path) -> str:
    with pytest.raises(SittingRefused) as refused:
        refuse_place(folder, homes)
    assert refused.value.code == "H009"
    assert refused.value.mend == "Name a folder of its own with --into, one that only the employer reads."
    return refused.value.message


def test_a_folder_of_its_own_is_taken_also_before_it_exists(tmp_path: Path) -> None:
    refuse_place(tmp_path, [tmp_path / "courses"])
    refuse_place(tmp_path / "not" / "yet", [tmp_path / "courses"])


@pytest.mark.parametrize("inner", [".", "a", "a/b/c"])
def test_a_work_tree_is_refused_at_any_depth(tmp_path: Path, inner: str) -> None:
    (tmp_path / ".git").mkdir()
    assert f"{tmp_path} is under version control, and the file holds the passphrase." in why(tmp_path / inner)


def test_a_linked_work_tree_whose_git_is_a_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / ".git").write_text("gitdir: elsewhere", encoding="utf-8")
    assert "is under version control" in why(tmp_path)


def test_a_built_site_is_refused(tmp_path: Path) -> None:
    (tmp_path / "assets").mkdir()
    (tmp_path / "assets" / "journeybook.js").touch()
    assert f"{tmp_path} is a built site" in why(tmp_path / "sittings")


def test_the_folders_of_the_courses_are_refused_and_what_lies_beside_them_is_not(tmp_path: Path) -> None:
    courses = tmp_path / "course_src"
    courses.mkdir()
    assert "it is in course_src, beside the courses" in why(courses / "drill", courses)
    refuse_place(tmp_path / "course_src_private", [courses])


def test_a_way_round_by_dots_or_by_a_link_is_seen_through(tmp_path: Path) -> None:
    courses = tmp_path / "course_src"
    (tmp_path / "out").mkdir()
    courses.mkdir()
    assert "beside the courses" in why(tmp_path / "out" / ".." / "course_src", courses)
    (tmp_path / "link").symlink_to(courses)
    assert "beside the courses" in why(tmp_path / "link" / "deeper", courses)

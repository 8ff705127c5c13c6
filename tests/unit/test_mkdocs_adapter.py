"""MkDocs builds our pages, and only ours; a fault leaves the last site as it was."""

from __future__ import annotations

import filecmp
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from mkdocs.exceptions import Abort, ConfigurationError, PluginError

from journeybook import mkdocs_adapter

ROOT = Path(__file__).parents[2]
STARTER = ROOT / "builder" / "starter"


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A fresh first course."""
    folder = tmp_path / "project"
    shutil.copytree(STARTER, folder)
    return folder


def build(
    project: Path, site: str = "site", tool: str = "mkdocs", *more: str
) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [
            sys.executable,
            "-m",
            tool,
            "build",
            "-f",
            str(project / "mkdocs.yml"),
            "-d",
            str(project / site),
            *more,
        ],
        env=os.environ | {"SOURCE_DATE_EPOCH": "1764000000"},
        capture_output=True,
        text=True,
        check=False,
    )


def files_of(folder: Path) -> set[str]:
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}


def break_a_question(project: Path) -> None:
    bank = project / "quizzes" / "first-course" / "bits.yml"
    bank.write_text(bank.read_text(encoding="utf-8").replace("right: b", "right: d"), encoding="utf-8")


@pytest.mark.parametrize("written", ["theme: mkdocs", "theme: {name: readthedocs}", ""])
def test_nothing_is_built_in_another_theme(project: Path, written: str) -> None:
    settings = project / "mkdocs.yml"
    text = settings.read_text(encoding="utf-8")
    own = "theme:\n  name: journeybook\n"
    assert own in text
    settings.write_text(text.replace(own, f"{written}\n"), encoding="utf-8")
    built = build(project)
    assert built.returncode == 1
    assert "name: journeybook" in built.stderr
    assert "1 fault in 1 file." in built.stderr
    assert not (project / "site").exists()


def test_the_site_holds_every_page_and_no_source(project: Path) -> None:
    done = build(project)
    assert done.returncode == 0, done.stderr
    made = files_of(project / "site")
    assert {
        "index.html",
        "first-course.html",
        "first-course/check.html",
        "first-course/10-start/change-the-bit.html",
    } <= made
    assert not [name for name in made if name.endswith((".yml", ".py", ".txt", ".svg"))]
    assert "sitemap.xml" not in made


def test_a_fault_is_told_with_its_line_and_leaves_the_last_site(project: Path) -> None:
    assert build(project).returncode == 0
    before = (project / "site" / "index.html").read_bytes()
    break_a_question(project)
    done = build(project)
    assert done.returncode == 1
    assert "Fault Q012" in done.stderr
    assert "quizzes/first-course/bits.yml, line 46" in done.stderr
    assert "Traceback" not in done.stderr
    assert (project / "site" / "index.html").read_bytes() == before


def test_a_course_that_is_not_there_is_told_without_a_traceback(project: Path) -> None:
    config = project / "mkdocs.yml"
    config.write_text(
        config.read_text(encoding="utf-8").replace("[first-course]", "[first-curse]"), encoding="utf-8"
    )
    done = build(project)
    assert done.returncode == 1
    assert "first-course" in done.stderr
    assert "Traceback" not in done.stderr


def test_two_builds_of_the_same_source_are_the_same_bytes(project: Path) -> None:
    assert build(project, "one").returncode == 0
    assert build(project, "two").returncode == 0
    names = sorted(files_of(project / "one"))
    assert names == sorted(files_of(project / "two"))
    same, different, unreadable = filecmp.cmpfiles(project / "one", project / "two", names, shallow=False)
    assert (different, unreadable) == ([], [])
    assert same == names


def test_the_continuation_of_mkdocs_makes_the_same_site(project: Path) -> None:
    assert build(project, "one").returncode == 0
    done = build(project, "two", "properdocs")
    assert done.returncode == 0, done.stderr
    names = sorted(files_of(project / "one"))
    assert names == sorted(files_of(project / "two"))
    _, different, _ = filecmp.cmpfiles(project / "one", project / "two", names, shallow=False)
    assert different == []


def test_several_courses_give_a_rack(project: Path) -> None:
    for folder in ("course_src", "quizzes"):
        shutil.copytree(project / folder / "first-course", project / folder / "second-course")
    config = project / "mkdocs.yml"
    config.write_text(
        config.read_text(encoding="utf-8").replace("[first-course]", "[first-course, second-course]"),
        encoding="utf-8",
    )
    done = build(project)
    assert done.returncode == 0, done.stderr
    rack = (project / "site" / "index.html").read_text(encoding="utf-8")
    assert "first-course/index.html" in rack
    assert "second-course/index.html" in rack


def test_strict_mode_counts_our_warnings(project: Path) -> None:
    bank = project / "quizzes" / "first-course" / "bits.yml"
    text = bank.read_text(encoding="utf-8").replace(', reason: "A glove is caught sooner than a hand."', "")
    bank.write_text(text, encoding="utf-8")
    assert build(project).returncode == 0
    assert build(project, "site", "mkdocs", "--strict").returncode == 1


def test_settings_that_are_wrong_are_told_like_any_fault_and_leave_the_last_site(project: Path) -> None:
    assert build(project).returncode == 0
    before = files_of(project / "site")
    config = project / "mkdocs.yml"
    config.write_text(
        config.read_text(encoding="utf-8").replace("profile: here", "profil: here"), encoding="utf-8"
    )
    done = build(project)
    assert done.returncode == 1
    assert "\nFault C001   A journeybook plugin has no key called `profil`.\n" in done.stderr
    assert "Where        mkdocs.yml, line 8, column 7; plugin journeybook\n" in done.stderr
    assert "Traceback" not in done.stderr
    assert files_of(project / "site") == before


def test_a_site_without_courses_is_told_like_any_fault(project: Path) -> None:
    config = project / "mkdocs.yml"
    config.write_text(config.read_text(encoding="utf-8").replace("[first-course]", "[]"), encoding="utf-8")
    done = build(project)
    assert done.returncode == 1
    assert "\nFault C011   `courses` has no entries; it needs at least 1.\n" in done.stderr


def test_settings_in_an_inherited_file_are_left_to_the_words_of_mkdocs(project: Path) -> None:
    config = project / "mkdocs.yml"
    config.write_text(
        config.read_text(encoding="utf-8").replace("- journeybook", "journeybook"), encoding="utf-8"
    )
    config.rename(project / "base.yml")
    config.write_text("INHERIT: base.yml\nplugins:\n  journeybook:\n    profile: [a]\n", encoding="utf-8")
    done = build(project)
    assert done.returncode == 1
    assert "Plugin 'journeybook' option 'profile'" in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize(
    ("written", "said"),
    [
        pytest.param(
            "plugins:\n\t- search\n", "Fault S006   The line is indented with a tab.\n", id="no YAML"
        ),
        pytest.param("site_name: Ours\n", "docs_dir leads away.", id="what only MkDocs knows"),
    ],
)
def test_the_preview_tells_of_a_broken_mkdocs_yml_without_a_traceback(
    tmp_path: Path, written: str, said: str
) -> None:
    def refuse() -> None:
        raise ConfigurationError("docs_dir leads away.")

    config = tmp_path / "mkdocs.yml"
    config.write_text(written, encoding="utf-8")
    with pytest.raises(Abort) as ended:  # which the server prints as it is
        mkdocs_adapter._said_plainly(refuse, config)()
    assert str(ended.value).startswith(said)


def test_a_site_folder_that_cannot_be_made_is_told_in_a_sentence(project: Path) -> None:
    (project / "taken").write_text("a file", encoding="utf-8")
    done = build(project, "taken/site")
    assert done.returncode == 1
    assert "The site cannot be written to" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_site_folder_that_may_only_be_read_is_told_in_a_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # Whoever runs the tests as root may write everywhere, so the answer of the system is given by hand.
    monkeypatch.setattr(mkdocs_adapter.os, "access", lambda _path, _mode: False)
    with pytest.raises(PluginError, match="you may only read there"):
        mkdocs_adapter._need_to_write_in(tmp_path)

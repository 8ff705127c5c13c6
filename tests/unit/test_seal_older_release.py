"""An older release is sealed from the sources that stand beside it, and from nothing else."""

from __future__ import annotations

import hashlib
import zipfile
from pathlib import Path
from typing import Any

import pytest
from course_to_release import Yard

from journeybook import release_sources
from journeybook.sittings import sitting_file


@pytest.fixture
def yard(tmp_path: Path) -> Yard:
    """1.0 is released; what the course says now is another thing."""
    made = Yard(tmp_path)
    made.release()
    made.change("For everyone who drills", "For all who drill")
    return made


def sources(yard: Yard) -> Path:
    return yard.course / "releases" / "1.0" / "uk" / "sources.zip"


def digest(yard: Yard, version: str = "1.0") -> str:
    return hashlib.sha256(
        (yard.course / "releases" / version / "uk" / "compiled.json").read_bytes()
    ).hexdigest()


def told(yard: Yard, *more: str) -> str:
    result = yard.seal(*more)
    assert result.exit_code == 1, result.output
    assert not (yard.out / "class.sitting.json").exists()
    return " ".join(result.output.split())


def test_a_course_that_has_moved_on_is_sealed_by_version(yard: Yard) -> None:
    assert "or seal a kept release: `--version 1.0`." in told(yard)
    result = yard.seal("--version", "1.0")
    assert result.exit_code == 0, result.output
    sitting = sitting_file.read(yard.out / "class.sitting.json")
    assert (sitting.version, sitting.digest) == ("1.0", digest(yard))
    assert "Sealed pillar-drill 1.0 for 2 people." in result.output


def test_the_first_of_two_releases_is_sealed_by_version(yard: Yard) -> None:
    yard.change('version: "1.0"', 'version: "1.1"')
    yard.release()
    assert yard.seal("--version", "1.0").exit_code == 0
    assert sitting_file.read(yard.out / "class.sitting.json").digest == digest(yard)
    assert digest(yard) != digest(yard, "1.1")


def test_a_course_with_faults_today_does_not_keep_its_release_back(yard: Yard) -> None:
    yard.add("course.yml", "titel: x\n")
    assert yard.seal("--version", "1.0").exit_code == 0


def test_files_that_are_again_those_of_an_older_release_are_sealed_without_the_zip(yard: Yard) -> None:
    yard.change('version: "1.0"', 'version: "1.1"')
    yard.release()
    yard.change('version: "1.1"', 'version: "1.0"')
    yard.change("For all who drill", "For everyone who drills")
    sources(yard).unlink()
    assert "not a release" in told(yard)
    assert yard.seal("--version", "1.0").exit_code == 0


def test_a_version_that_was_never_released_is_named_beside_those_that_were(yard: Yard) -> None:
    result = yard.seal("--version", "3.0")
    assert result.exit_code == 2
    assert "has no release '3.0' for the profile uk; there: 1.0." in " ".join(result.output.split())


def test_a_release_without_its_sources_is_told_with_the_way_out(yard: Yard) -> None:
    sources(yard).unlink()
    said = told(yard, "--version", "1.0")
    assert "The sources of pillar-drill 1.0 are not on the shelf" in said
    assert "give --config-file the mkdocs.yml there." in said


def test_sources_that_were_changed_are_told_by_their_digest(yard: Yard) -> None:
    with zipfile.ZipFile(sources(yard)) as packed:
        files = {name: packed.read(name) for name in packed.namelist()}
    name = "course_src/pillar-drill/course.yml"
    files[name] = files[name].replace(b"Set the guard", b"Set a guard", 1)
    with zipfile.ZipFile(sources(yard), "w") as packed:
        for each, data in files.items():
            packed.writestr(each, data)
    assert f"not the {digest(yard)[:12]} that was released" in told(yard, "--version", "1.0")


@pytest.mark.parametrize("name", ["../escaped.yml", "/escaped.yml", "a/../../escaped.yml"])
def test_a_name_that_leads_out_of_the_zip_is_refused(yard: Yard, name: str) -> None:
    with zipfile.ZipFile(sources(yard), "w") as packed:
        packed.writestr(name, "x")
    assert "leads out of it" in told(yard, "--version", "1.0")


@pytest.mark.parametrize("data", [b"", b"PK", b"no zip at all"])
def test_a_damaged_zip_is_a_sentence(yard: Yard, data: bytes) -> None:
    sources(yard).write_bytes(data)
    assert "is damaged" in told(yard, "--version", "1.0")


def test_a_bomb_is_not_unpacked(yard: Yard) -> None:
    with zipfile.ZipFile(sources(yard), "w", zipfile.ZIP_DEFLATED) as packed:
        for number in range(3):
            packed.writestr(f"course_src/pillar-drill/{number}.yml", bytes(100 << 20))
    assert "unpacks to more than" in told(yard, "--version", "1.0")


def test_releasing_the_same_again_adds_the_sources_and_changes_nothing_else(tmp_path: Path) -> None:
    yard = Yard(tmp_path)
    yard.release()
    before = {path: path.read_bytes() for path in (yard.course / "releases").rglob("*.[jz]*")}
    sources(yard).unlink()
    yard.release()
    assert {path: path.read_bytes() for path in (yard.course / "releases").rglob("*.[jz]*")} == before


def test_no_release_and_nothing_hidden_stands_in_the_zip(tmp_path: Path) -> None:
    yard = Yard(tmp_path)
    (yard.course / ".cache").mkdir()
    (yard.course / ".cache" / "x").touch()
    yard.release()
    with zipfile.ZipFile(sources(yard)) as packed:
        names = packed.namelist()
    assert all(name.startswith(("course_src/pillar-drill/", "quizzes/pillar-drill/")) for name in names)
    assert not [name for name in names if "releases" in name or "/." in name]
    assert "quizzes/pillar-drill/competence-check.yml" in names


def test_folders_of_other_names_are_no_hindrance(tmp_path: Path) -> None:
    yard = Yard(tmp_path)
    (yard.root / "course_src").rename(yard.root / "lessons")
    (yard.root / "quizzes").rename(yard.root / "questions")
    text = yard.config.read_text(encoding="utf-8").replace("docs_dir: course_src", "docs_dir: lessons")
    yard.config.write_text(text + "      quizzes: questions\n", encoding="utf-8")
    yard.course = yard.root / "lessons" / "pillar-drill"
    yard.release()
    yard.change("For everyone who drills", "For all who drill")
    assert yard.seal("--version", "1.0").exit_code == 0
    assert sitting_file.read(yard.out / "class.sitting.json").digest == digest(yard)


def test_what_comes_back_from_an_older_release_is_marked_by_it(yard: Yard) -> None:
    """The whole way: sealed by version, handed in, taken in, while the course says something else."""
    assert yard.seal("--version", "1.0").exit_code == 0
    private = yard.out / "class.sitting.json"
    robin = sitting_file.read(private).people[0]
    paper = yard.run("from-paper", private, robin.ticket)
    assert paper.exit_code == 0, paper.output
    keyed = yard.out / f"{robin.ticket}.keyed.yml"
    keyed.write_text(
        keyed.read_text(encoding="utf-8").replace('keyed-by: ""', 'keyed-by: "A. Fenwright"'),
        encoding="utf-8",
    )
    result = yard.run("mark", keyed, "--sitting", private)
    assert "Taken in      Robin Ashdown" in result.output, result.output
    assert result.exit_code == 0


def test_files_that_were_saved_while_it_was_released_are_not_kept_as_its_sources(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    yard = Yard(tmp_path)
    packed = release_sources.pack

    def saved_meanwhile(*given: Any) -> bytes:
        yard.change("For everyone who drills", "For all who drill")
        return packed(*given)

    monkeypatch.setattr(release_sources, "pack", saved_meanwhile)
    assert "Its files were changed meanwhile, so they are not kept beside it" in yard.release().output
    assert not sources(yard).exists()
    assert digest(yard)

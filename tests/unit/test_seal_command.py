"""Sealing at the terminal: what is written, what is refused, and that nothing is left of a sitting that failed."""

from __future__ import annotations

import errno
import json
import os
import resource
import stat
import subprocess
import sys
from pathlib import Path

import pytest
from course_to_release import Yard

from journeybook.marking import canonical
from journeybook.sittings import sealed_blob, sitting_file


@pytest.fixture
def yard(tmp_path: Path) -> Yard:
    made = Yard(tmp_path)
    made.release()
    return made


def left(folder: Path) -> list[str]:
    """What lies in a folder; the lock's own file holds nothing."""
    found = [] if not folder.exists() else sorted(path.name for path in folder.iterdir())
    return [name for name in found if not name.endswith(".lock")]


def test_a_class_gets_one_page_and_the_employer_one_private_file(yard: Yard) -> None:
    result = yard.seal()
    assert result.exit_code == 0, result.output
    assert left(yard.out) == ["class.html", "class.sitting.json"]
    sitting = sitting_file.read(yard.out / "class.sitting.json")
    assert stat.S_IMODE((yard.out / "class.sitting.json").stat().st_mode) == 0o600
    assert (sitting.course, sitting.version) == ("pillar-drill", "1.0")
    for told in (
        "Sealed pillar-drill 1.0 for 2 people.",
        f"Passphrase        {sitting.passphrase}\n",
        f"{sitting.people[0].ticket}  Robin Ashdown (0417)\n",
        f"{sitting.people[1].ticket}  Kay Ferriby (0512)  +3 min  read out\n",
    ):
        assert told in result.output


def test_the_page_opens_with_the_passphrase_told_and_holds_neither_it_nor_a_ticket(yard: Yard) -> None:
    assert yard.seal().exit_code == 0
    sitting = sitting_file.read(yard.out / "class.sitting.json")
    page = (yard.out / "class.html").read_text(encoding="utf-8")
    sealed = page.split('id="sealed">', 1)[1].split("</script>", 1)[0]
    record = canonical.write(json.loads(sealed))
    content = sealed_blob.unseal(record, sitting.passphrase)
    assert content["sitting"] == sitting.id
    assert len(content["places"]) == 2
    assert sitting.passphrase not in page
    assert not any(place.ticket in page for place in sitting.people)


def hand_in(yard: Yard, private: Path) -> str:
    """Robin hands in on paper, all left empty; returns the ticket."""
    ticket = sitting_file.read(private).people[0].ticket
    assert yard.run("from-paper", private, ticket).exit_code == 0
    keyed = private.with_name(f"{ticket}.keyed.yml")
    text = keyed.read_text(encoding="utf-8").replace('keyed-by: ""', 'keyed-by: "A. Fenwright"')
    keyed.write_text(text, encoding="utf-8")
    result = yard.run("mark", keyed, "--sitting", private)
    assert result.exit_code == 0, result.output
    return ticket


def test_keyed_answers_are_not_begun_where_they_would_be_published(yard: Yard) -> None:
    assert yard.seal().exit_code == 0
    private = yard.out / "class.sitting.json"
    ticket = sitting_file.read(private).people[0].ticket
    result = yard.run("from-paper", private, ticket, "--into", yard.course)
    assert result.exit_code == 1
    assert "as secret as the sitting" in result.output
    assert not list(yard.course.glob("*.keyed.yml"))


def test_who_sat_earlier_is_counted_and_spared_the_same_questions(yard: Yard) -> None:
    assert yard.seal().exit_code == 0
    first = yard.out / "class.sitting.json"
    hand_in(yard, first)
    before = first.read_bytes()
    yard.class_file = yard.class_file.rename(yard.class_file.with_name("again.yml"))
    result = yard.seal("--earlier", first)
    assert result.exit_code == 0, result.output
    robin, kay = sitting_file.read(yard.out / "again.sitting.json").people
    assert (robin.attempt_number, len(robin.avoid)) == (2, 4)
    assert (kay.attempt_number, kay.avoid) == (1, ())
    assert first.read_bytes() == before


@pytest.mark.parametrize(
    ("old", "new", "code", "line"),
    [
        ('title: "Wednesday class"\n', "", "C002", 1),
        ("date: 2026-12-02", "date: 2.12.2026", "C009", 2),
        ("people:", "peple:", "C001", 7),
        ('id: "0512"', 'id: "0417"', "H006", 9),
        ("extra-percent: 25", "extra-percent: 25, extra-minutes: 3", "H007", 9),
        ("extra-percent: 25", "extra-percent: 900", "C007", 9),
        ('id: "0417"', "id: 0417", "S016", 8),
        ('trainer: "A. Fenwright"', '\ttrainer: "A. Fenwright"', "S0", 6),
        ('  - {id: "0417", name: "Robin Ashdown"}\n', '  - {id: "0417", name: "Robin Ashdown"}\n' * 2, "H006", 9),
        ("Kay Ferriby", "Kay\x07Ferriby", "S0", 9),
    ],
)  # fmt: skip
def test_a_fault_in_the_class_file_is_told_with_its_line(
    yard: Yard, old: str, new: str, code: str, line: int
) -> None:
    text = yard.class_file.read_text(encoding="utf-8")
    assert old in text
    yard.class_file.write_text(text.replace(old, new), encoding="utf-8")
    result = yard.seal()
    assert result.exit_code == 1, result.output
    assert f"Fault {code}" in result.output
    assert f"class.yml, line {line}" in result.output
    assert "Mend" in result.output
    assert left(yard.out) == []


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "Fault"),
        (b"\xff\xfe\x00", "Fault"),
        (b"[" * 5000, "Fault"),
        (b"title: x\n" * 200_000, "which no class file is."),
    ],
)
def test_a_class_file_that_is_none_is_a_sentence(yard: Yard, data: bytes, said: str) -> None:
    yard.class_file.write_bytes(data)
    result = yard.seal()
    assert result.exit_code == 1, result.output
    assert said in result.output
    assert left(yard.out) == []


def test_a_course_that_nobody_approved_has_no_release_and_is_not_sealed(tmp_path: Path) -> None:
    yard = Yard(tmp_path, approved=False)
    assert yard.run("release", "pillar-drill").exit_code == 1
    result = yard.seal()
    assert result.exit_code == 1
    assert "Fault H008" in result.output
    assert "Release it with `journeybook release pillar-drill`" in " ".join(result.output.split())
    assert left(yard.out) == []


def test_a_course_with_faults_is_told_its_faults(yard: Yard) -> None:
    yard.add("course.yml", "titel: x\n")
    result = yard.seal()
    assert result.exit_code == 1
    assert "titel" in result.output


def test_another_course_than_those_of_the_site_is_named_by_the_near_one(yard: Yard) -> None:
    result = yard.run("seal", "pillar-dril", "--class", yard.class_file, "--into", yard.out)
    assert result.exit_code == 2
    assert "names pillar-drill" in result.output


def test_a_check_that_is_not_sealed_is_warned_of(tmp_path: Path) -> None:
    yard = Yard(tmp_path)
    check = yard.root / "quizzes" / "pillar-drill" / "competence-check.yml"
    check.write_text(check.read_text(encoding="utf-8").replace("sealed: true\n", ""), encoding="utf-8")
    yard.release()
    result = yard.seal()
    assert result.exit_code == 0, result.output
    assert "Warning H010" in result.output


def test_a_folder_that_is_there_is_used_and_what_is_in_it_stays(yard: Yard) -> None:
    yard.out.mkdir()
    (yard.out / "other.html").write_text("mine", encoding="utf-8")
    assert yard.seal().exit_code == 0
    assert left(yard.out) == ["class.html", "class.sitting.json", "other.html"]


@pytest.mark.parametrize("name", ["class.html", "class.sitting.json"])
def test_a_sitting_is_never_written_over(yard: Yard, name: str) -> None:
    yard.out.mkdir()
    (yard.out / name).write_text("mine", encoding="utf-8")
    result = yard.seal()
    assert result.exit_code == 1
    assert result.output.startswith("Error: ")
    assert f"{name} is there already, and a sitting is never written over." in result.output
    assert left(yard.out) == [name]
    assert (yard.out / name).read_text(encoding="utf-8") == "mine"


def test_nothing_private_is_written_where_it_would_be_published(yard: Yard, tmp_path: Path) -> None:
    tree, site = tmp_path / "tree", tmp_path / "built"
    (tree / ".git").mkdir(parents=True)
    (site / "assets").mkdir(parents=True)
    (site / "assets" / "journeybook.js").touch()
    for into, why in (
        (tree / "deep" / "er", "is under version control"),
        (site / "sittings", "is a built site"),
        (yard.root / "course_src" / "sittings", "beside the courses"),
        (yard.root / "quizzes", "beside the courses"),
    ):
        result = yard.seal(into=into)
        assert result.exit_code == 1
        assert why in result.output
        assert "--into" in result.output
        assert not (into / "class.sitting.json").exists()


def test_a_link_into_a_tree_does_not_lead_there(yard: Yard, tmp_path: Path) -> None:
    (tmp_path / "tree" / ".git").mkdir(parents=True)
    (tmp_path / "link").symlink_to(tmp_path / "tree")
    result = yard.seal(into=tmp_path / "link" / "here")
    assert result.exit_code == 1
    assert "is under version control" in result.output


def test_a_lock_that_somebody_holds_is_told_and_nothing_is_left(
    yard: Yard, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sitting_file, "PATIENCE", 0.1)
    yard.out.mkdir()
    holder = subprocess.Popen(
        [sys.executable, "-c", _HOLD, str(yard.out / "class.sitting.json.lock")],
        stdout=subprocess.PIPE, stdin=subprocess.PIPE,
    )  # fmt: skip
    assert holder.stdout is not None
    assert holder.stdout.readline() == b"held\n"
    try:
        result = yard.seal()
    finally:
        holder.communicate()
    assert result.exit_code == 1
    assert result.output == (
        "Error: Somebody else is at class.sitting.json. Wait until the other command has ended; then try again.\n"
    )
    assert left(yard.out) == []
    assert yard.seal().exit_code == 0


_HOLD = """
import fcntl, sys
file = open(sys.argv[1], "ab")
fcntl.flock(file, fcntl.LOCK_EX)
print("held", flush=True)
sys.stdin.read()
"""


@pytest.mark.parametrize("cap", [100, 200_000])
def test_a_disk_without_room_is_told_and_nothing_is_left(yard: Yard, cap: int) -> None:
    """A process that may write no file beyond ``cap`` bytes: the page is larger than either."""
    words = ["seal", "pillar-drill", "--class", yard.class_file, "--into", yard.out, "-f", yard.config]
    done = subprocess.run(
        [sys.executable, "-c", "from journeybook.cli import main; main()", *map(str, words)],
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (cap, cap)),
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 1
    assert done.stderr.startswith("Error: The sitting could not be made: ")
    assert os.strerror(errno.EFBIG) in done.stderr
    assert "Traceback" not in done.stderr
    assert "Passphrase" not in done.stdout
    assert left(yard.out) == []


def test_a_private_file_that_finds_no_room_takes_the_page_away_too(
    yard: Yard, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    result = yard.seal()
    assert result.exit_code == 1
    assert "No space left on device. Nothing of it is left." in result.output
    assert left(yard.out) == []


@pytest.mark.parametrize("name", ["mkdocs.yml", "mkdocs.yml/deeper"])
def test_a_folder_that_cannot_be_made_is_a_sentence(yard: Yard, tmp_path: Path, name: str) -> None:
    (tmp_path / "mkdocs.yml").touch()
    result = yard.seal(into=tmp_path / name)
    assert result.exit_code in (1, 2)
    assert "Error: " in result.output
    assert isinstance(result.exception, SystemExit)


def test_a_folder_that_may_not_be_written_to_is_a_sentence(
    yard: Yard, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: object, **__: object) -> int:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), "the folder")

    monkeypatch.setattr(sitting_file.os, "open", refused)
    result = yard.seal()
    assert result.exit_code == 1
    assert result.output.startswith("Error: The sitting could not be made: the folder: Permission denied.")
    assert left(yard.out) == []


def test_an_earlier_file_that_is_no_sitting_is_a_sentence(yard: Yard) -> None:
    result = yard.seal("--earlier", yard.class_file)
    assert result.exit_code == 1
    assert result.output.startswith("Error: The file is not the private file of a sitting.")
    assert left(yard.out) == []

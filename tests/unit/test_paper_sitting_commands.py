"""``journeybook paper questions``, ``answers`` and ``class``, as people at the terminal meet them."""

from __future__ import annotations

import shutil
import stat
import sys
from copy import copy
from pathlib import Path

import pypdfium2
import pytest
from click.testing import Result
from course_to_release import Yard

from journeybook.diagnostics.extras import to_install
from journeybook.sittings import sitting_file
from journeybook.sittings.sitting import Sitting


@pytest.fixture(scope="module")
def sealed(tmp_path_factory: pytest.TempPathFactory) -> Yard:
    """Sealing takes its time, so it is done once."""
    made = Yard(tmp_path_factory.mktemp("sealed"))
    made.release()
    assert made.seal().exit_code == 0
    return made


@pytest.fixture
def yard(sealed: Yard, tmp_path: Path) -> Yard:
    """A copy for one test."""
    made = copy(sealed)
    made.root, made.out = tmp_path / "site", tmp_path / "private"
    shutil.copytree(sealed.root, made.root)
    shutil.copytree(sealed.out, made.out)
    made.config, made.course = made.root / "mkdocs.yml", made.root / "course_src" / "pillar-drill"
    return made


def private(yard: Yard) -> Path:
    return yard.out / "class.sitting.json"


def sitting(yard: Yard) -> Sitting:
    return sitting_file.read(private(yard))


def paper(yard: Yard, what: str, into: Path, *more: str) -> Result:
    return yard.run("paper", what, private(yard), into, *more)


def told(result: Result, code: int = 1) -> str:
    assert result.exit_code == code, result.output
    return " ".join(result.output.split())


def read(path: Path) -> str:
    document = pypdfium2.PdfDocument(path.read_bytes())
    return " ".join(" ".join(page.get_textpage().get_text_bounded() for page in document).split())


@pytest.mark.parametrize("what", ["questions", "answers"])
def test_each_ticket_has_a_file_of_its_own_that_only_the_owner_reads(yard: Yard, what: str) -> None:
    into = yard.out / "papers"
    result = paper(yard, what, into)
    assert result.exit_code == 0, result.output
    files = sorted(into.iterdir())
    assert [file.name for file in files] == [
        f"class-{number:02d}-{place.ticket}-{what}.pdf"
        for number, place in enumerate(sitting(yard).people, 1)
    ]
    assert result.output.split() == [str(file) for file in files]
    for file, place in zip(files, sitting(yard).people, strict=True):
        assert stat.S_IMODE(file.stat().st_mode) == 0o600
        assert place.ticket in read(file)
        assert place.name in read(file)
        assert sitting(yard).passphrase not in read(file)


def test_one_ticket_goes_into_one_file_however_it_is_typed(yard: Yard) -> None:
    kay = sitting(yard).people[1]
    path = yard.out / "kay.pdf"
    result = paper(
        yard, "questions", path, "--ticket", kay.ticket.replace("-", "").lower(), "--type", "large"
    )
    assert result.exit_code == 0, result.output
    assert "Kay Ferriby" in read(path)
    assert "The questions are read out to this person." in read(path)
    assert f"({sitting(yard).minutes} and {kay.extra_minutes} extra)" in read(path)


def test_several_papers_do_not_go_into_one_file(yard: Yard) -> None:
    assert "is one file, and there are 2 papers: name a folder, or one --ticket." in told(
        paper(yard, "answers", yard.out / "all.pdf")
    )


def test_an_unknown_ticket_is_said_in_a_sentence(yard: Yard) -> None:
    assert "No place of this sitting has the ticket 'ZZZZZ-ZZZZZ'." in told(
        paper(yard, "questions", yard.out, "--ticket", "ZZZZZ-ZZZZZ")
    )


def test_nothing_is_written_where_one_of_the_files_is_there_already(yard: Yard) -> None:
    into = yard.out / "papers"
    into.mkdir()
    last = into / f"class-02-{sitting(yard).people[1].ticket}-questions.pdf"
    last.write_text("mine")
    assert "is there already; no paper is written over another." in told(paper(yard, "questions", into))
    assert [file.name for file in into.iterdir()] == [last.name]
    assert last.read_text() == "mine"


@pytest.mark.parametrize("what", ["questions", "answers", "class"])
def test_no_paper_is_written_where_it_would_be_published(yard: Yard, tmp_path: Path, what: str) -> None:
    (tmp_path / "tree" / ".git").mkdir(parents=True)
    for into, why in (
        (tmp_path / "tree" / "papers", "is under version control"),
        (yard.course, "beside the courses"),
    ):
        output = told(paper(yard, what, into))
        assert why in output
        assert "they are as secret as the sitting" in output
    assert list((tmp_path / "tree").iterdir()) == [tmp_path / "tree" / ".git"]


def test_the_papers_of_a_release_are_set_after_the_course_has_moved_on(yard: Yard) -> None:
    assert paper(yard, "questions", yard.out / "before").exit_code == 0
    yard.change("For everyone who drills", "For all who drill")
    assert paper(yard, "questions", yard.out / "after").exit_code == 0
    before, after = (sorted((yard.out / name).iterdir()) for name in ("before", "after"))
    assert [file.read_bytes() for file in before] == [file.read_bytes() for file in after]


def test_without_the_typesetter_the_way_to_it_is_said_and_nothing_is_written(
    yard: Yard, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    for what in ("questions", "answers", "class"):
        output = told(paper(yard, what, yard.out / "papers"))
        assert output == f"Error: Papers need the typesetter: {to_install('print')}."
    assert not (yard.out / "papers").exists()


def test_a_sitting_of_another_course_is_said_in_a_sentence(yard: Yard) -> None:
    path = private(yard)
    path.write_text(path.read_text().replace('"course":"pillar-drill"', '"course":"band-saw"'))
    assert "which this mkdocs.yml does not name" in told(paper(yard, "questions", yard.out / "papers"))
    assert "is not here" in told(paper(yard, "class", yard.out / "papers"))


def test_from_the_sealed_class_to_the_fingerprint_on_its_sheet(yard: Yard) -> None:
    robin = sitting(yard).people[0]
    assert yard.run("from-paper", private(yard), robin.ticket).exit_code == 0
    keyed = yard.out / f"{robin.ticket}.keyed.yml"
    keyed.write_text(keyed.read_text().replace('keyed-by: ""', 'keyed-by: "A. Fenwright"'))
    assert yard.run("mark", keyed, "--sitting", private(yard)).exit_code == 0
    held = sitting(yard).people[0].attempt
    assert held is not None
    result = paper(yard, "class", yard.out)
    assert result.exit_code == 0, result.output
    page = read(yard.out / "class-class.pdf").replace(" ", "")
    assert held.fingerprint.replace("-", "") in page
    assert "KayFerriby" in page
    assert sitting(yard).passphrase.replace(" ", "") not in page


@pytest.mark.parametrize("what", ["class", "questions", "answers"])
def test_a_name_that_cannot_be_printed_is_to_be_written_by_hand(yard: Yard, what: str) -> None:
    assert "Warning" not in told(paper(yard, what, yard.out / "first"), 0)
    private(yard).write_text(private(yard).read_text("utf-8").replace("Kay Ferriby", "李娜"), "utf-8")
    output = told(paper(yard, what, yard.out / "papers"), 0)
    assert "Write them in by hand" in output
    assert "李娜 (0512)" in output
    assert "Robin" not in output.split("Warning")[1]

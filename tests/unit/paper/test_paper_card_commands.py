"""``journeybook paper cards``, ``records``, ``tag``, ``observation`` and ``everything``, as a trainer types them."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from paper_checks import pages_of, size_of_page
from paper_demo import DRILL_ROOT

from journeybook.cli import main
from journeybook.diagnostics.extras import to_install

Run = Callable[..., Result]
COURSE = "pillar-drill"
CARDS = Path("course_src/pillar-drill/job-cards")


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Runs ``journeybook paper`` in a copy of the pillar drill's site."""
    shutil.copytree(DRILL_ROOT, tmp_path, dirs_exist_ok=True)
    (tmp_path / "mkdocs.yml").write_text(
        "site_name: Drill\ndocs_dir: course_src\ntheme: {name: journeybook}\n"
        "plugins: [{journeybook: {courses: [pillar-drill], profile: uk}}]\n",
        encoding="utf-8",
    )
    monkeypatch.chdir(tmp_path)

    def invoke(*arguments: str) -> Result:
        return CliRunner().invoke(main, ["paper", *arguments], catch_exceptions=False)

    return invoke


def _lines(said: Result) -> list[str]:
    assert said.exit_code == 0, said.output
    return [line.replace("\\", "/") for line in said.output.splitlines()]


def test_everything_goes_into_one_folder_and_is_counted(run: Run) -> None:
    assert _lines(run("everything", COURSE, "out")) == [
        "1/3  out/card-before-you-drill.pdf",
        "2/3  out/tag-out-of-use.pdf",
        "3/3  out/observation-prove-the-guard.pdf",
    ]
    assert {path.name for path in Path("out").iterdir()} == {
        "card-before-you-drill.pdf",
        "tag-out-of-use.pdf",
        "observation-prove-the-guard.pdf",
    }


def test_the_same_day_the_same_course_gives_the_same_files(run: Run) -> None:
    run("everything", COURSE, "one")
    run("everything", COURSE, "two")
    for path in Path("one").iterdir():
        assert path.read_bytes() == (Path("two") / path.name).read_bytes()


def test_cards_are_all_but_the_tags_unless_they_are_named(run: Run) -> None:
    assert _lines(run("cards", COURSE, "out")) == ["out/card-before-you-drill.pdf"]
    assert _lines(run("cards", COURSE, "out-of-use", "before-you-drill", "out")) == [
        "out/tag-out-of-use.pdf",
        "out/card-before-you-drill.pdf",
    ]


def test_cards_go_into_one_file_and_two_on_a_page_of_the_paper_that_is_named(run: Run) -> None:
    assert _lines(run("cards", COURSE, "card.pdf", "--two-up", "--paper", "us-letter")) == ["card.pdf"]
    pdf = Path("card.pdf").read_bytes()
    assert size_of_page(pdf) == (279, 216)
    (page,) = pages_of(pdf)
    assert page.count("Before you drill") == 2


def test_a_tag_among_cards_for_one_file_is_sent_to_its_own_command(run: Run) -> None:
    said = run("cards", COURSE, "out-of-use", "card.pdf")
    assert said.exit_code == 1
    assert (
        "out-of-use is a tag, which has a page of its own: journeybook paper tag pillar-drill card.pdf"
        in said.output
    )
    assert _lines(run("tag", COURSE, "card.pdf")) == ["card.pdf"]


def test_a_card_becomes_a_record_by_saying_how_long_it_is_kept(run: Run) -> None:
    none = run("records", COURSE, "out")
    assert none.exit_code == 1
    assert 'pillar-drill has no record: give a job card of it `keep: "…"`.' in none.output
    card = CARDS / "before-you-drill.yml"
    card.write_text('keep: "Two years."\n' + card.read_text(encoding="utf-8"), encoding="utf-8")
    assert _lines(run("records", COURSE, "out")) == ["out/record-before-you-drill.pdf"]
    (page,) = pages_of(Path("out/record-before-you-drill.pdf").read_bytes())
    assert "Kept: Two years." in page


def test_the_sheet_of_a_practical_goes_where_it_is_wanted(run: Run) -> None:
    assert _lines(run("observation", COURSE, "prove-the-guard", "sheet.pdf")) == ["sheet.pdf"]
    assert "Set the guard" in pages_of(Path("sheet.pdf").read_bytes())[0]


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("cards", "pillar-dril", "out"), "does not name the course 'pillar-dril'; it names pillar-drill."),
        (
            ("cards", COURSE, "before-you-dril", "out"),
            "pillar-drill has no job card 'before-you-dril'; it has before-you-drill.",
        ),
        (
            ("observation", COURSE, "prove", "out"),
            "pillar-drill has no practical 'prove'; it has prove-the-guard.",
        ),
        (
            ("cards", COURSE, "mkdocs.yml"),
            "mkdocs.yml is a file; name a folder, or a file that ends in .pdf.",
        ),
    ],
)
def test_a_slip_is_a_sentence_with_its_cure(run: Run, arguments: tuple[str, ...], sentence: str) -> None:
    said = run(*arguments)
    assert said.exit_code != 0
    assert sentence in " ".join(said.output.split())


def test_a_course_with_a_fault_is_not_printed(run: Run) -> None:
    card = CARDS / "before-you-drill.yml"
    card.write_text(card.read_text(encoding="utf-8").replace("title:", "titel:"), encoding="utf-8")
    said = run("everything", COURSE, "out")
    assert said.exit_code == 1
    assert "titel" in said.output
    assert not Path("out").exists()


def test_without_the_typesetter_a_sentence_says_how_to_get_it(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    said = run("everything", COURSE, "out")
    assert said.exit_code == 1
    assert f"Papers need the typesetter: {to_install('print')}." in said.output
    assert not Path("out").exists()

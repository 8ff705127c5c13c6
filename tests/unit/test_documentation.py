"""What README.md and DEVELOPERS.md say is so: commands, examples, folders."""

from __future__ import annotations

import re
import shutil
from fractions import Fraction
from pathlib import Path

import pytest

from journeybook.cli import COMMANDS
from journeybook.content.arithmetic import decimal_text
from journeybook.content.calculations import working
from journeybook.content.formats.plans import PLAN
from journeybook.content.loader import load_course
from journeybook.report import report
from journeybook.source.strict_yaml import read_document

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def fenced(text: str, language: str) -> list[str]:
    return re.findall(rf"^```{language}\n(.*?)^```", text, re.DOTALL | re.MULTILINE)


def test_the_table_of_commands_is_complete() -> None:
    told = set(re.findall(r"^\| `journeybook ([\w-]+)", README, re.MULTILINE))
    assert told == set(COMMANDS)


def test_readme_opens_with_the_job_in_one_paragraph() -> None:
    first = README.split("\n\n")[1]
    assert first.startswith("Journeybook turns what an experienced worker knows")
    assert len(first) < 1000


def test_the_fault_in_the_readme_is_what_that_mistake_gives(tmp_path: Path) -> None:
    told = next(block for block in fenced(README, "") if block.startswith("Fault"))
    for folder in ("course_src", "quizzes"):
        shutil.copytree(ROOT / folder, tmp_path / folder)
    place = re.search(r"Where +(\S+), line (\d+), column", told)
    wrong = re.search(r"^ +\d+ \| (.*)$", told, re.MULTILINE)
    assert place is not None
    assert wrong is not None
    bank = tmp_path / place[1]
    lines = bank.read_text(encoding="utf-8").splitlines()
    lines[int(place[2]) - 1] = wrong[1]
    bank.write_text("\n".join(lines) + "\n", encoding="utf-8")
    _, problems = load_course(tmp_path, "powered-respirator", profile="us")
    assert told.rstrip() in report(problems, tmp_path)


@pytest.mark.parametrize("example", fenced(DEVELOPERS, "yaml"), ids=lambda text: text.split("\n")[0][:40])
def test_every_yaml_example_reads_without_a_fault(example: str) -> None:
    _, problems = read_document(example.encode(), "example.yml")
    assert problems == []


DRAWN = [text for text in fenced(DEVELOPERS, "yaml") if text.startswith("draw:")]


def test_each_kind_of_drawing_has_an_example() -> None:
    kinds = [kind for text in DRAWN for kind in re.findall(r"kind: (\w+)", text)]
    assert (
        kinds
        == re.findall(
            r"^\| `(\w+)` \|",
            DEVELOPERS.split("### figures/ID.yml with `draw`\n")[1].split("\n```")[0],
            re.MULTILINE,
        )[1:]
    )
    assert set(kinds) == set(PLAN.records)


@pytest.mark.parametrize("example", DRAWN, ids=lambda text: re.findall(r"kind: (\w+)", text)[0])
def test_each_example_of_a_drawing_is_drawn(example: str, tmp_path: Path) -> None:
    for folder in ("course_src", "quizzes"):
        shutil.copytree(ROOT / folder, tmp_path / folder)
    figure = tmp_path / "course_src" / "powered-respirator" / "figures" / "from-the-documents.yml"
    figure.write_text(f"title: An example\n{example}", encoding="utf-8")
    course, problems = load_course(tmp_path, "powered-respirator", profile="us")
    assert course is not None, problems
    assert course.figures["from-the-documents"].svg.startswith("<svg")


def test_the_calculator_of_the_documents_is_read_and_gives_what_its_note_says(tmp_path: Path) -> None:
    example = next(text for text in fenced(DEVELOPERS, "yaml") if "\nresults:" in text)
    for folder in ("course_src", "quizzes"):
        shutil.copytree(ROOT / folder, tmp_path / folder)
    file = tmp_path / "course_src" / "powered-respirator" / "calculators" / "disc-speed.yml"
    file.write_text(example, encoding="utf-8")
    course, problems = load_course(tmp_path, "powered-respirator", profile="us")
    assert course is not None, problems
    ready = working(
        course.calculators["disc-speed"], {"kit": course.kit.values, "profile": course.profile.values}
    )
    found = ready.results(ready.starts)
    assert found["turns"] == 12223
    assert decimal_text(Fraction(str(found["a_second"])), 1) == "203.7"


def test_the_assembly_bench_of_the_documents_is_read_and_drawn(tmp_path: Path) -> None:
    example = next(text for text in fenced(DEVELOPERS, "yaml") if text.startswith("kind: assembly"))
    shutil.copytree(ROOT / "tests" / "faults" / "base", tmp_path, dirs_exist_ok=True)
    file = tmp_path / "course_src" / "pillar-drill" / "benches" / "disc.yml"
    file.write_text(example, encoding="utf-8")
    course, problems = load_course(tmp_path, "pillar-drill", profile="uk")
    assert [problem for problem in problems if problem.place.file.endswith("disc.yml")] == []
    assert course is None or "disc" in course.benches


def test_every_folder_that_the_house_names_is_there() -> None:
    house = fenced(DEVELOPERS, "")[0]
    for name in re.findall(r"^ *([\w.-]+(?:/|\.py))", house, re.MULTILINE):
        assert any(ROOT.glob(f"**/{name.rstrip('/')}")), name


def test_links_between_the_documents_lead_somewhere() -> None:
    heads = {
        re.sub(r"[^\w -]", "", head.lower()).replace(" ", "-")
        for head in re.findall(r"^#+ (.+)$", DEVELOPERS, re.MULTILINE)
    }
    from_the_readme = re.findall(r"\(DEVELOPERS\.md#([\w-]+)\)", README)
    within = re.findall(r"\]\(#([\w-]+)\)", DEVELOPERS)
    assert from_the_readme
    assert within
    for mark in from_the_readme + within:
        assert mark in heads, mark

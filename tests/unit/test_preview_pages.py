"""After any edit the preview shows, byte for byte, what a fresh start would show."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path
from queue import Queue
from typing import Any

import pytest

from journeybook.building import finished_site
from journeybook.content.load_memo import LoadMemo
from journeybook.pages import reading
from journeybook.pages.leaf import Leaf
from journeybook.pages.lesson_page import lesson_leaf
from journeybook.preview import Preview
from journeybook.project import Project

BASE = Path(__file__).parents[1] / "faults" / "base"
COURSE = "course_src/pillar-drill"
QUIZZES = "quizzes/pillar-drill"
Edit = Callable[[Path], None]


@pytest.fixture
def project(tmp_path: Path) -> Project:
    """A copy of the small course, to edit."""
    shutil.copytree(BASE, tmp_path / "ours")
    return Project(root=tmp_path / "ours", courses=("pillar-drill",), profile="uk")


def preview() -> Preview:
    return Preview(LoadMemo(), [], tell=lambda _said: None)


def everything(of: Preview, project: Project) -> dict[str, bytes]:
    """Every page and file that the preview would give to a browser, by path."""
    shown = of.renewed(project, "Quillon Basin Works")
    return {path: make() for path, make in shown.parts.items()}


def replaced(file: str, old: str, new: str) -> Edit:
    def edit(root: Path) -> None:
        text = (root / file).read_text(encoding="utf-8")
        assert old in text, f"{file} has no {old!r}"
        (root / file).write_text(text.replace(old, new), encoding="utf-8")

    return edit


def new_lesson(root: Path) -> None:
    first = root / COURSE / "modules/10-guard/10-parts.yml"
    text = first.read_text(encoding="utf-8").replace("id: parts-of-the-guard", "id: more-parts")
    # A practice question is asked in one lesson only.
    text = "\n".join(line for line in text.splitlines() if not line.startswith("practice:"))
    (first.parent / "20-more.yml").write_text(text + "\n", encoding="utf-8")


def without_the_new_lesson(root: Path) -> None:
    (root / COURSE / "modules/10-guard/20-more.yml").unlink()


EDITS = {
    "a lesson's text": replaced(f"{COURSE}/modules/10-guard/10-parts.yml", "What it covers", "What it hides"),
    "a lesson's title, which other pages name": replaced(
        f"{COURSE}/modules/10-guard/10-parts.yml", 'title: "Parts of the guard"', 'title: "Its parts"'
    ),
    "a practice question": replaced(f"{QUIZZES}/guard.yml", 'ask: "', 'ask: "Think first. '),
    "a question of the check": replaced(
        f"{QUIZZES}/check.yml", "What holds the sleeve", "What locks the sleeve"
    ),
    "a word of the glossary": replaced(f"{COURSE}/words.yml", "word: sleeve", "word: sliding sleeve"),
    "a value of the kit sheet": replaced(f"{COURSE}/kit.yml", 'value: "6"', 'value: "5"'),
    "a value of the profile": replaced(f"{COURSE}/profiles/uk.yml", 'value: "', 'value: "always '),
    "a source": replaced(f"{COURSE}/sources.yml", 'title: "', 'title: "The '),
    "the drawing of a figure": replaced(
        f"{COURSE}/figures/guard-laid-out.svg", 'height="100"', 'height="101"'
    ),
    "the words of a figure": replaced(f"{COURSE}/figures/guard-laid-out.yml", 'title: "', 'title: "Drawn: '),
    "the title of the course": replaced(f"{COURSE}/course.yml", 'title: "', 'title: "New: '),
    "a module": replaced(f"{COURSE}/modules/10-guard/module.yml", "Know the guard", "Meet the guard"),
    "the blueprint": replaced(f"{QUIZZES}/competence-check.yml", "minutes: ", "minutes: 1"),
    "a lesson more": new_lesson,
    "that lesson gone again": without_the_new_lesson,
    "a fault": replaced(f"{QUIZZES}/check.yml", "right: b", "right: z"),
    "the fault mended": replaced(f"{QUIZZES}/check.yml", "right: z", "right: b"),
}


def test_after_each_of_many_edits_it_shows_what_a_fresh_start_would_show(project: Project) -> None:
    kept = preview()
    before = everything(kept, project)
    for name, edit in EDITS.items():
        edit(project.root)
        now = everything(kept, project)
        assert now != before, f"{name}: the edit changes nothing, so it tries nothing"
        if name == "a fault":
            assert b"Fault Q012" in now["pillar-drill/check.html"]
            assert before.keys() >= {path for path in now if path.endswith(".html")}
        else:
            assert now == everything(preview(), project), f"after {name}"
        before = now


def test_it_shows_the_pages_and_files_of_a_build(project: Project) -> None:
    built = finished_site(project, name="Quillon Basin Works", preview=True)
    files = {page.path: page.html for page in built.pages} | dict(built.files)
    assert everything(preview(), project) == files


def test_what_the_audit_finds_is_told_a_moment_later(project: Project) -> None:
    replaced(
        f"{COURSE}/modules/10-guard/10-parts.yml",
        'title: "Parts of the guard"\nminutes: 6',
        'title: "Parts of the guard"\nminutes: 90',
    )(project.root)
    told: Queue[str] = Queue()
    shown = Preview(LoadMemo(), [], tell=told.put).renewed(project, "Quillon Basin Works")
    assert shown.report == ""
    assert "90 min" in told.get(timeout=10)


def test_a_page_is_made_when_it_is_asked_for_and_not_before(
    project: Project, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[str] = []

    def noting(*arguments: Any) -> Leaf:
        made.append(arguments[3].id)
        return lesson_leaf(*arguments)

    monkeypatch.setattr(reading, "lesson_leaf", noting)
    shown = preview().renewed(project, "Quillon Basin Works")
    assert made == []
    shown.parts["pillar-drill/20-setting/set-the-guard.html"]()
    assert made == ["set-the-guard"]

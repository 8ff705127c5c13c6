"""What is printed as it stands refuses braces, so that no reference is ever printed with them."""

from __future__ import annotations

from pathlib import Path

import pytest

from journeybook.content.assembly import course_from_files

BASE = Path(__file__).parents[2] / "faults" / "base"
COURSE = "course_src/pillar-drill"
FILES = {path.relative_to(BASE).as_posix(): path.read_bytes() for path in BASE.rglob("*") if path.is_file()}


def codes(file: str, old: str, new: str) -> list[str]:
    """The codes of the course with one text changed."""
    path = f"{COURSE}/{file}"
    text = FILES[path].decode()
    assert old in text
    _, problems = course_from_files(
        FILES | {path: text.replace(old, new, 1).encode()},
        "pillar-drill",
        profile="uk",
        course_dir=COURSE,
        quiz_dir="quizzes/pillar-drill",
    )
    return [problem.code for problem in problems]


@pytest.mark.parametrize(
    ("file", "written"),
    [
        pytest.param("course.yml", 'title: "Set the guard', id="course title"),
        pytest.param("course.yml", 'equipment: "Pillar', id="equipment"),
        pytest.param("course.yml", 'place: "Basin', id="place of the issuer"),
        pytest.param("course.yml", 'name: "T. Marrable', id="name of the contact"),
        pytest.param("course.yml", 'reach: "the office', id="where to reach the contact"),
        pytest.param("kit.yml", 'title: "', id="kit title"),
        pytest.param("kit.yml", 'value: "', id="kit value"),
        pytest.param("profiles/uk.yml", 'value: "', id="profile value"),
        pytest.param("sources.yml", 'title: "', id="citation title"),
        pytest.param("sources.yml", 'clause: "', id="citation clause"),
    ],
)
def test_braces_are_refused_where_nothing_replaces_them(file: str, written: str) -> None:
    start = written.index('"') + 1
    assert "W007" in codes(file, written, f"{written[:start]}{{kit.guard-gap}} {written[start:]}")


def test_a_word_of_the_glossary_holds_no_reference() -> None:
    assert "W007" in codes("words.yml", "word: sleeve", 'word: "{kit.guard-gap} sleeve"')


@pytest.mark.parametrize(
    ("file", "title"),
    [
        pytest.param("modules/10-guard/module.yml", 'title: "', id="module title"),
        pytest.param("modules/10-guard/10-parts.yml", 'title: "', id="lesson title"),
        pytest.param("figures/guard-laid-out.yml", 'title: "', id="figure title"),
    ],
)
def test_titles_that_are_worded_may_hold_references(file: str, title: str) -> None:
    assert codes(file, title, f"{title}{{kit.guard-gap}} ") == []

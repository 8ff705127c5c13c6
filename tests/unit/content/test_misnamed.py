"""Files that are not quite called as they should be: which are taken for a part of the course, and as what."""

from __future__ import annotations

import pytest

from journeybook.content.misnamed import Renamed, rename

BANK = b"title: Guard\nquestions: []\n"


def renamed(files: dict[str, bytes], *others: str) -> Renamed:
    return rename(files, list(others), course_dir="course_src/c", quiz_dir="quizzes/c")


@pytest.mark.parametrize(
    ("path", "proper"),
    [
        ("quizzes/c/flow.yaml", "quizzes/c/flow.yml"),
        ("quizzes/c/flow.YML", "quizzes/c/flow.yml"),
        ("quizzes/c/flow.yml.txt", "quizzes/c/flow.yml"),
        ("quizzes/c/flow.yml.yml", "quizzes/c/flow.yml"),
        ("quizzes/c/flow.txt", "quizzes/c/flow.yml"),
        ("quizzes/c/Competence-Check.yml", "quizzes/c/competence-check.yml"),
        ("course_src/c/COURSE.YML", "course_src/c/course.yml"),
        ("course_src/c/kits.yml", "course_src/c/kit.yml"),
        ("course_src/c/modules/10-a/Module.yml", "course_src/c/modules/10-a/module.yml"),
        ("course_src/c/modules/10-a/10-look.yaml", "course_src/c/modules/10-a/10-look.yml"),
        ("course_src/c/profiles/us.yml.txt", "course_src/c/profiles/us.yml"),
        ("course_src/c/drills/jam.yaml", "course_src/c/drills/jam.yml"),
        ("course_src/c/figures/stack.Svg", "course_src/c/figures/stack.svg"),
        ("course_src/c/figures/stack.svg.svg", "course_src/c/figures/stack.svg"),
    ],
)
def test_a_misnamed_file_counts_as_there_but_unread(path: str, proper: str) -> None:
    found = renamed({path: BANK})
    assert (found.paths, found.unread) == ([proper], [proper])
    assert [(problem.code, problem.place.file) for problem in found.problems] == [("C026", path)]


@pytest.mark.parametrize(
    "path",
    [
        "quizzes/c/flow.yml",
        "quizzes/c/.flow.yaml",
        "quizzes/c/flow.yaml~",
        "quizzes/c/deeper/flow.yaml",
        "quizzes/c/flow.docx",
        "course_src/c/minutes.yaml",
        "course_src/c/README.md",
        "course_src/c/modules/10-a/10-look.yml",
        "course_src/c/modules/10-a/deeper/10-look.yaml",
        "course_src/c/figures/stack.svg",
        "course_src/c/figures/photo.png",
        "course_src/c/translations/press.yaml",
        "course_src/c/releases/1.0/us/compiled.yaml",
    ],
)
def test_what_is_well_called_or_belongs_nowhere_is_left_to_the_layout(path: str) -> None:
    found = renamed({path: BANK})
    assert (found.paths, found.unread, found.problems) == ([path], [], [])


def test_a_note_is_no_bank() -> None:
    found = renamed({"quizzes/c/notes.txt": b"title: cake\nAsk Tom about the questions: soon.\n"})
    assert found.problems == []


def test_a_file_that_could_not_be_read_is_misnamed_all_the_same() -> None:
    assert renamed({}, "course_src/c/kit.yaml").unread == ["course_src/c/kit.yml"]


def test_beside_the_file_itself_a_copy_is_only_warned_of() -> None:
    found = renamed({"quizzes/c/flow.yml": BANK, "quizzes/c/flow.yaml": BANK})
    assert (found.paths, found.unread) == (["quizzes/c/flow.yml"], [])
    assert [problem.message for problem in found.problems] == [
        "`flow.yml` stands beside it and is read; `flow.yaml` is not."
    ]


def test_of_two_wrong_endings_the_first_stands_for_the_file() -> None:
    found = renamed({"quizzes/c/flow.yaml": BANK, "quizzes/c/flow.yml.txt": BANK})
    assert (found.paths, found.unread) == (["quizzes/c/flow.yml"], ["quizzes/c/flow.yml"])
    assert [(problem.level, problem.message) for problem in found.problems] == [
        ("fault", "Files end in `.yml` here; `flow.yaml` is not read."),
        ("warning", "Another file stands for `flow.yml` as well; `flow.yml.txt` is not read."),
    ]


def test_names_that_differ_in_capitals_alone_are_left_to_the_layout() -> None:
    found = renamed({"course_src/c/kit.yml": b"", "course_src/c/Kit.yml": b""})
    assert found.problems == []

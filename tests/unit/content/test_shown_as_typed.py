"""Pictures and HTML in texts are warned of; a bracket in prose is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from journeybook.content.assembly import course_from_files
from journeybook.diagnostics.problem import Level

BASE = Path(__file__).parents[2] / "faults" / "base"
FILES = {path.relative_to(BASE).as_posix(): path.read_bytes() for path in BASE.rglob("*") if path.is_file()}
LESSON = "course_src/pillar-drill/modules/10-guard/10-parts.yml"
WORDS = "      The {word.sleeve} slides inside the collar."


def codes(text: str) -> list[str]:
    """The codes that a lesson's text gives."""
    lesson = FILES[LESSON].decode()
    assert WORDS in lesson
    indented = "\n".join(f"      {line}" for line in text.split("\n"))
    course, problems = course_from_files(
        FILES | {LESSON: lesson.replace(WORDS, f"{indented}\n\n{WORDS}").encode()},
        "pillar-drill",
        profile="uk",
        course_dir="course_src/pillar-drill",
        quiz_dir="quizzes/pillar-drill",
    )
    assert course is not None, problems
    assert {problem.level for problem in problems} <= {Level.WARNING}
    return [problem.code for problem in problems]


@pytest.mark.parametrize(
    "text",
    [
        "5 < 6",
        "<3 bar",
        "a<b and c>d",
        "below <b bar",
        "p<p2 and q>p",
        "Write <your name> here",
        "<https://example.org>",
        "<training@example.org>",
        "if a <b and b> c",
        r"\<b>",
        "`<b>`",
        "```\n<b>\n![a](b)\n```",
        r"\![a](b)",
        "`![a](b)`",
        "Stop![1]",
        "Stop! [words](https://example.org)",
        "Look out!",
    ],
)
def test_prose_code_and_escaped_signs_are_let_be(text: str) -> None:
    assert codes(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "<b>now</b>",
        "<B>now</B>",
        "one<br>two",
        "one<br />two",
        "</p>",
        '<img src="a.png">',
        "<font color=red>now</font>",
        "<!-- later -->",
        "<div>\nnow\n</div>",
    ],
)
def test_html_is_warned_of_once_a_pair(text: str) -> None:
    assert codes(text) == ["W009"]


@pytest.mark.parametrize(
    "text",
    ["![a](b.png)", "![](b.png)", "![a](my guard.png)", "![a][b]", "so ![a](https://example.org/b.png)"],
)
def test_a_picture_is_warned_of(text: str) -> None:
    assert codes(text) == ["W008"]

"""Whatever becomes of an author's files, loading a course gives problems and never an exception."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journeybook.audit import audit
from journeybook.content.assembly import course_from_files
from journeybook.content.wording import Wording
from journeybook.diagnostics.problem import Level
from journeybook.diagnostics.render_text import render_text

BASE = Path(__file__).parents[1] / "faults" / "base"
GOOD = {
    path.relative_to(BASE).as_posix(): path.read_text(encoding="utf-8")
    for path in sorted(BASE.rglob("*"))
    if path.is_file()
}

ODD_VALUES = [
    "", "0", "-1", "1e9", "true", "null", "[]", "{}", "[[a], {b: c}]", "{a: {b: [c]}}", '"', "'", "|", ">-",
    "2026-02-30", '"{kit.guard-gap}"', '"{word.}"', '"{"', '"{given}"', "a: b", "- a", "*a", "&a b", "!!x y",
    '"' + "x" * 500 + '"', "99999999999999999999", '"1/0"', '"above / (gap - gap)"', '"((((("', '"2 ^ 3"',
    "guard-01", "guard-parts", "a", "\t", "\u0000", "é\u2028", "~", "0x1F", ".5", "kit", "[kit, kit]",
    "choice", "number",
]  # fmt: skip


def _delete(lines: list[str], at: int, _other: int, _odd: str) -> None:
    del lines[at]


def _double(lines: list[str], at: int, other: int, _odd: str) -> None:
    lines.insert(other, lines[at])


def _swap(lines: list[str], at: int, other: int, _odd: str) -> None:
    lines[at], lines[other] = lines[other], lines[at]


def _replace_value(lines: list[str], at: int, _other: int, odd: str) -> None:
    key, colon, _ = lines[at].partition(": ")
    lines[at] = f"{key}{colon}{odd}" if colon else odd


def _replace_inner_value(lines: list[str], at: int, _other: int, odd: str) -> None:
    key, colon, _ = lines[at].rpartition(": ")
    lines[at] = f"{key}{colon}{odd}}}" if colon else odd


def _indent(lines: list[str], at: int, _other: int, _odd: str) -> None:
    lines[at] = "  " + lines[at]


def _outdent(lines: list[str], at: int, _other: int, _odd: str) -> None:
    lines[at] = lines[at].removeprefix("  ")


def _cut_short(lines: list[str], at: int, _other: int, _odd: str) -> None:
    lines[at] = lines[at][: len(lines[at]) // 2]


def _insert(lines: list[str], at: int, _other: int, odd: str) -> None:
    lines.insert(at, odd)


Change = Callable[[list[str], int, int, str], None]
CHANGES: list[Change] = [
    _delete, _double, _swap, _replace_value, _replace_inner_value, _indent, _outdent, _cut_short, _insert,
]  # fmt: skip

NAMES = st.sampled_from([
    "course_src/pillar-drill/modules/xx/module.yml",
    "course_src/pillar-drill/modules/20-guard/10-a.yml",
    "course_src/pillar-drill/modules/10-guard/deep/er.yml",
    "course_src/pillar-drill/figures/odd.svg",
    "course_src/pillar-drill/odd/odd.yml",
    "course_src/pillar-drill/benches/odd.yml",
    "quizzes/pillar-drill/odd.yaml",
    "quizzes/pillar-drill/check.yml",
    "quizzes/pillar-drill/.yml",
])  # fmt: skip

STEPS = st.lists(
    st.one_of(
        st.tuples(
            st.just("change"), st.sampled_from(sorted(GOOD)), st.sampled_from(CHANGES), st.integers(0, 200),
            st.integers(0, 200), st.sampled_from(ODD_VALUES),
        ),
        st.tuples(st.just("drop"), st.sampled_from(sorted(GOOD))),
        st.tuples(st.just("move"), st.sampled_from(sorted(GOOD)), NAMES),
        st.tuples(st.just("bytes"), st.sampled_from(sorted(GOOD)), st.binary(max_size=40)),
    ),
    min_size=1,
    max_size=5,
)  # fmt: skip


def changed(steps: list[tuple[object, ...]]) -> dict[str, bytes]:
    texts: dict[str, str | bytes] = dict(GOOD)
    for step in steps:
        match step:
            case ("change", str(path), change, int(at), int(other), str(odd)):
                text = texts.get(path)
                lines = text.split("\n") if isinstance(text, str) else []
                if lines:
                    change(lines, at % len(lines), other % len(lines), odd)  # type: ignore[operator]
                    texts[path] = "\n".join(lines)
            case ("drop", str(path)):
                texts.pop(path, None)
            case ("move", str(path), str(to)):
                if path in texts:
                    texts[to] = texts.pop(path)
            case ("bytes", str(path), bytes(data)):
                texts[path] = data
    return {path: text.encode() if isinstance(text, str) else text for path, text in texts.items()}


def load_and_look(steps: list[tuple[object, ...]]) -> None:
    files = changed(steps)
    course, problems = course_from_files(
        files,
        "pillar-drill",
        profile="uk",
        course_dir="course_src/pillar-drill",
        quiz_dir="quizzes/pillar-drill",
    )
    assert (course is None) == any(problem.level is Level.FAULT for problem in problems)
    assert [problem.place for problem in problems] == sorted(problem.place for problem in problems)
    shown = {path: data.decode("utf-8", "replace").split("\n") for path, data in files.items()}
    render_text(problems, lambda path: shown.get(path, []))
    if course is not None:
        audit(course)
        words = Wording(course)
        for lesson in course.lessons:
            for block in lesson.body:
                words.block(block.text, lesson.id)
        for question in course.questions.values():
            words.plain(question.ask)


@settings(max_examples=400, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(STEPS)
def test_no_change_to_the_files_raises(steps: list[tuple[object, ...]]) -> None:
    load_and_look(steps)


@pytest.mark.long
@settings(max_examples=4_000, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(STEPS)
def test_no_change_to_the_files_raises_in_a_long_run(steps: list[tuple[object, ...]]) -> None:
    load_and_look(steps)

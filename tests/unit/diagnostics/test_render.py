from __future__ import annotations

import json

import pytest

from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.excerpt import excerpt
from journeybook.diagnostics.problem import Level, Place, Problem
from journeybook.diagnostics.render_json import render_json
from journeybook.diagnostics.render_text import WIDTH, render_problem, render_text

FLOW = ["questions:", *[""] * 39, "    right: c4"]


def lines_of(file: str) -> list[str]:
    return FLOW if file.endswith("flow.yml") else []


RIGHT = Problem(
    code="Q012",
    level=Level.FAULT,
    place=Place(
        file="quizzes/powered-respirator/flow.yml", line=41, column=12, length=2, trail="question flow-03"
    ),
    message="The right answer names an option that is not there.",
    mend="Use one of c1, c2, c3, or add an option with id c4.",
)


def test_a_problem_is_rendered_with_its_place_its_line_and_its_mend() -> None:
    assert render_problem(RIGHT, lines_of) == (
        "Fault Q012   The right answer names an option that is not there.\n"
        "Where        quizzes/powered-respirator/flow.yml, line 41, column 12; question\n"
        "             flow-03\n"
        "                 41 |     right: c4\n"
        "                    |            ^^\n"
        "Mend         Use one of c1, c2, c3, or add an option with id c4."
    )


def test_other_places_stand_below_the_first() -> None:
    problem = warning(
        "S010",
        Place(file="flow.yml", line=41, column=5, length=5),
        "Twice.",
        "Delete one.",
        [Place(file="flow.yml", line=1, column=1, length=9), Place(file="gone.yml", line=3, column=7)],
    )
    assert render_problem(problem, lines_of) == (
        "Warning S010 Twice.\n"
        "Where        flow.yml, line 41, column 5\n"
        "                 41 |     right: c4\n"
        "                    |     ^^^^^\n"
        "Also at      flow.yml, line 1, column 1\n"
        "                  1 | questions:\n"
        "                    | ^^^^^^^^^\n"
        "Also at      gone.yml, line 3, column 7\n"
        "Mend         Delete one."
    )


def test_a_problem_of_a_whole_file_names_no_line() -> None:
    problem = fault("S007", Place(file="flow.yml", length=0), "There is nothing in this file.", "Delete it.")
    assert render_problem(problem, lines_of) == (
        "Fault S007   There is nothing in this file.\nWhere        flow.yml\nMend         Delete it."
    )


def test_all_problems_are_sorted_and_summed_up() -> None:
    first, second = (fault("S007", Place(file=name, length=0), "Empty.", "Delete it.") for name in "ab")
    assert render_text([second, first], lines_of) == (
        "Fault S007   Empty.\nWhere        a\nMend         Delete it.\n\n"
        "Fault S007   Empty.\nWhere        b\nMend         Delete it.\n\n"
        "2 faults in 2 files.\n"
    )


def test_prose_is_wrapped_below_itself() -> None:
    problem = fault("S007", Place(file="a", length=0), "word " * 40, "do " * 60)
    lines = render_problem(problem, lines_of).split("\n")
    assert max(len(line) for line in lines) <= WIDTH
    assert all(line[:13].strip() in ("", "Fault S007", "Where", "Mend") for line in lines)


def test_control_characters_in_a_message_are_made_visible() -> None:
    problem = fault("S007", Place(file="a", length=0), "The key a\x1b[31m is odd.", "Delete it.")
    assert "The key a␛[31m is odd." in render_problem(problem, lines_of)


@pytest.mark.parametrize(
    ("line", "column", "length", "shown", "marker"),
    [
        ("a: no", 4, 2, "a: no", "   ^^"),
        ("\ta: no", 5, 2, "→a: no", "    ^^"),
        ("面: no", 4, 2, "面: no", "    ^^"),
        ("a: 面体", 4, 2, "a: 面体", "   ^^^^"),
        ("cafe\u0301: no", 8, 2, "cafe\u0301: no", "      ^^"),
        ("a\x00: no", 5, 2, "a␀: no", "    ^^"),
        ("a\u202e: no", 5, 2, "a<U+202E>: no", "           ^^"),
        ("a:", 3, 1, "a:", "  ^"),
        ("", 1, 1, "", "^"),
        ("a: no", 4, 99, "a: no", "   ^^"),
    ],
)
def test_the_marker_stands_under_what_it_means(
    line: str, column: int, length: int, shown: str, marker: str
) -> None:
    assert excerpt(line, column, length, 56) == (shown, marker)


@pytest.mark.parametrize("column", [1, 30, 100, 199, 200, 201])
@pytest.mark.parametrize("length", [1, 5, 80])
def test_a_long_line_is_cut_around_the_marker(column: int, length: int) -> None:
    line = "".join(chr(0x100 + number) for number in range(200))
    shown, marker = excerpt(line, column, length, 56)
    assert len(shown) <= 56
    assert len(marker) <= 56
    start = marker.index("^")
    if column <= 200:
        assert shown[start] == line[column - 1]
    first = line.index(shown.strip("…"))
    assert shown.startswith("…") == (first > 0)
    assert shown.endswith("…") == (first + len(shown.strip("…")) < 200)
    assert set(marker[start:]) == {"^"}


def test_a_long_line_of_wide_characters_is_cut_to_its_width() -> None:
    shown, marker = excerpt("面" * 200, 100, 2, 56)
    assert 2 * len(shown.strip("…")) + 2 <= 56
    assert marker.strip() == "^^^^"


def test_json_has_every_fact_under_a_stable_key() -> None:
    problem = fault("S010", Place(file="a.yml", line=2, trail="question q"), "m", "d", [Place(file="b.yml")])
    assert json.loads(render_json([problem])) == [
        {
            "code": "S010",
            "level": "fault",
            "title": "A key stands twice.",
            "message": "m",
            "mend": "d",
            "file": "a.yml",
            "line": 2,
            "column": 1,
            "length": 1,
            "trail": "question q",
            "also-at": [{"file": "b.yml", "line": 1, "column": 1, "length": 1, "trail": ""}],
        }
    ]


def test_json_of_nothing_is_an_empty_list() -> None:
    assert render_json([]) == "[]\n"

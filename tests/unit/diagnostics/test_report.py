from __future__ import annotations

from journeybook.diagnostics.codes import fault, warning
from journeybook.diagnostics.problem import Place, Problem
from journeybook.diagnostics.report import has_fault, sort_problems, summary


def at(file: str, line: int, column: int, code: str = "S010") -> Problem:
    return fault(code, Place(file=file, line=line, column=column), "m", "d")


def careful(file: str) -> Problem:
    return warning("S010", Place(file=file), "m", "d")


def test_problems_are_sorted_by_file_line_column_and_code() -> None:
    ordered = [at("a", 2, 9), at("a", 10, 1), at("a", 10, 2, "S009"), at("a", 10, 2, "S010"), at("b", 1, 1)]
    assert sort_problems(reversed(ordered)) == ordered


def test_the_summary_counts_faults_warnings_and_files() -> None:
    assert (
        summary([at("a", 1, 1), at("a", 2, 1), at("b", 1, 1), careful("a")])
        == "3 faults and 1 warning in 2 files."
    )


def test_the_summary_of_one_fault() -> None:
    assert summary([at("a", 1, 1)]) == "1 fault in 1 file."


def test_the_summary_of_warnings_alone() -> None:
    assert summary([careful("a"), careful("b")]) == "2 warnings in 2 files."


def test_the_summary_of_nothing() -> None:
    assert summary([]) == "No faults and no warnings."


def test_only_faults_stop_a_build() -> None:
    assert has_fault([careful("a"), at("a", 1, 1)])
    assert not has_fault([careful("a")])

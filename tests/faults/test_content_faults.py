"""Golden messages: each case lays its files over a good course; ``expected.txt`` is what an author reads.

``gone.txt`` names files of the good course that are missing in a case. Today is the same day for all.

To rewrite the expected texts on purpose: ``JOURNEYBOOK_REWRITE_EXPECTED=1 pytest
tests/faults/test_content_faults.py``, then read every change.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Sequence
from datetime import date
from pathlib import Path

import pytest

from journeybook.audit import audit
from journeybook.content.loader import load_course
from journeybook.diagnostics.problem import Level, Problem
from journeybook.diagnostics.render_text import render_text

HERE = Path(__file__).parent
BASE = HERE / "base"
TODAY = date(2026, 11, 25)
NOT_THE_AUTHORS = shutil.ignore_patterns("expected.txt", "gone.txt")
CASES = sorted(path for path in (HERE / "cases").iterdir() if path.is_dir())


def load(root: Path) -> list[Problem]:
    course, problems = load_course(root, "pillar-drill", profile="uk", today=TODAY)
    assert (course is None) == any(problem.level is Level.FAULT for problem in problems)
    # What the audit finds is worth reading once nothing else is to be mended.
    return problems or (audit(course) if course is not None else [])


def rendered(root: Path, problems: list[Problem]) -> str:
    def lines_of(file: str) -> Sequence[str]:
        path = root / file
        return path.read_text(encoding="utf-8").splitlines() if path.is_file() else ()

    return render_text(problems, lines_of)


def test_the_good_course_has_no_problem() -> None:
    assert load(BASE) == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_an_author_reads_what_is_expected(case: Path, tmp_path: Path) -> None:
    shutil.copytree(BASE, tmp_path, dirs_exist_ok=True)
    shutil.copytree(case, tmp_path, dirs_exist_ok=True, ignore=NOT_THE_AUTHORS)
    if (case / "gone.txt").exists():
        for path in (case / "gone.txt").read_text(encoding="utf-8").split():
            (tmp_path / path).unlink()
    expected = case / "expected.txt"
    text = rendered(tmp_path, load(tmp_path))
    if os.environ.get("JOURNEYBOOK_REWRITE_EXPECTED"):
        expected.write_text(text, encoding="utf-8")
    assert text == expected.read_text(encoding="utf-8")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_every_case_finds_something(case: Path) -> None:
    assert "Mend " in (case / "expected.txt").read_text(encoding="utf-8")

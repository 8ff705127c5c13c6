"""Work is done in a second process where that can be, and comes to the same where it cannot."""

from __future__ import annotations

import os
import shutil
import signal
import sys
from pathlib import Path

import pytest

from journeybook import building, second_process
from journeybook.finished import FinishedSite
from journeybook.project import Project

BASE = Path(__file__).parents[1] / "faults" / "base"

two_processes = pytest.mark.skipif(
    not second_process._may_fork(), reason="needs a second processor and a system that forks"
)


@two_processes
def test_the_work_is_done_in_another_process() -> None:
    assert second_process.begin(os.getpid)() != os.getpid()


@two_processes
def test_a_large_result_comes_whole() -> None:
    large = [b"page" * 100_000 for _ in range(20)]
    assert second_process.begin(lambda: large)() == large


def test_without_a_second_process_it_is_done_here(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(second_process, "_may_fork", lambda: False)
    assert second_process.begin(os.getpid)() == os.getpid()


@two_processes
def test_where_no_process_can_be_had_it_is_done_here(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse() -> int:
        raise BlockingIOError

    monkeypatch.setattr(second_process.os, "fork", refuse)
    assert second_process.begin(os.getpid)() == os.getpid()


@two_processes
def test_after_the_death_of_the_other_process_the_work_is_done_here() -> None:
    here = os.getpid()

    def die_elsewhere() -> str:
        if os.getpid() != here:
            os.kill(os.getpid(), signal.SIGKILL)
        return "done here"

    assert second_process.begin(die_elsewhere)() == "done here"


@two_processes
def test_what_the_work_raises_is_raised_by_the_waiting() -> None:
    def fail() -> None:
        raise ValueError("no such lesson")

    wait = second_process.begin(fail)
    with pytest.raises(ValueError, match="no such lesson"):
        wait()


def site(root: Path, *, from_lessons: int, monkeypatch: pytest.MonkeyPatch) -> FinishedSite:
    monkeypatch.setattr(building, "ENOUGH_LESSONS", from_lessons)
    project = Project(root=root, courses=("pillar-drill", "second-drill"), profile="uk")
    made = building.finished_site(project, name="Quillon Basin Works")
    assert not made.faulty, made.report
    return made


@two_processes
def test_one_process_and_two_make_the_same_bytes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copytree(BASE, tmp_path / "ours")
    for folder in ("course_src", "quizzes"):
        shutil.copytree(BASE / folder / "pillar-drill", tmp_path / "ours" / folder / "second-drill")
    begun: list[int] = []
    fork = os.fork
    monkeypatch.setattr(second_process.os, "fork", lambda: begun.append(1) or fork())
    alone = site(tmp_path / "ours", from_lessons=sys.maxsize, monkeypatch=monkeypatch)
    assert begun == []
    together = site(tmp_path / "ours", from_lessons=1, monkeypatch=monkeypatch)
    assert begun == [1]
    assert together == alone

"""Two records of one practical, compared at the command line."""

from __future__ import annotations

import sys
from pathlib import Path

from click.testing import CliRunner

from journeybook.cli import main

sys.path.insert(0, str(Path(__file__).parent / "marking"))

from test_agreement import by_another
from test_observation import CRITICAL, seen, with_step

from journeybook.marking.observation import write


def told(first: bytes, second: bytes, folder: Path) -> tuple[int, str]:
    (folder / "one.json").write_bytes(first)
    (folder / "two.json").write_bytes(second)
    result = CliRunner().invoke(main, ["agreement", str(folder / "one.json"), str(folder / "two.json")])
    return result.exit_code, result.output


def test_three_figures_and_each_step_apart(tmp_path: Path) -> None:
    code, output = told(write(seen()), write(by_another(with_step(CRITICAL, seen="no"))), tmp_path)
    assert code == 0
    for word in ("Agreed", "Kappa", "AC1", f"Apart        {CRITICAL}: yes; no"):
        assert word in output


def test_a_record_that_was_changed_is_refused(tmp_path: Path) -> None:
    code, output = told(write(seen()) + b"\n", write(seen()), tmp_path)
    assert code == 1
    assert "not an observation as its page saved it" in output


def test_one_observer_cannot_agree_with_himself(tmp_path: Path) -> None:
    code, output = told(write(seen()), write(seen()), tmp_path)
    assert (code, "by the same assessor" in output) == (1, True)

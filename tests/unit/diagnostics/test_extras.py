"""The command that adds packages names the program that runs, so that no other environment is changed."""

from __future__ import annotations

import shlex
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from journeybook.diagnostics.extras import to_install

ROOT = Path(__file__).parents[3]


@pytest.mark.parametrize("extra", ["print", "proof", "words"])
def test_the_program_is_this_one_and_the_extra_is_there(extra: str) -> None:
    program, *words = shlex.split(to_install(extra))
    assert Path(program).samefile(sys.executable)
    assert words == ["-m", "pip", "install", f"journeybook[{extra}]"]
    assert (
        extra
        in tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["optional-dependencies"]
    )
    assert subprocess.run([program, "-m", "pip", "--version"], check=True, capture_output=True).stdout


def test_a_path_with_blanks_stays_one_word(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "executable", "/home/T. Marrable/python")
    assert shlex.split(to_install("proof"))[0] == "/home/T. Marrable/python"

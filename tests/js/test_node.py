"""Runs the tests of the scripts with node's own runner; they are JavaScript because the scripts are."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).parent
FILES = sorted(path.name for path in HERE.glob("*.test.mjs"))


@pytest.mark.parametrize("name", FILES)
def test_node_file(name: str) -> None:
    done = subprocess.run(
        ["node", "--test", "--test-reporter=spec", str(HERE / name)],
        env=os.environ | {"PYTHON": sys.executable},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr

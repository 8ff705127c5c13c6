"""Runs each browser test file against the built demo site; the files are JavaScript because they drive two browsers."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).parent
FILES = sorted(path.name for path in HERE.glob("*.test.mjs"))


@pytest.mark.browser
@pytest.mark.parametrize("name", FILES)
def test_browser_file(name: str, demo_site: Path) -> None:
    done = subprocess.run(
        ["node", "--test", "--test-reporter=spec", "--test-concurrency=1", str(HERE / name)],
        env=os.environ | {"JOURNEYBOOK_SITE": str(demo_site), "PYTHON": sys.executable},
        capture_output=True,
        text=True,
        timeout=600,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    assert "tests 0" not in done.stdout, f"{name} holds no test"

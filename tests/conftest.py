"""Fixtures for the whole suite: the demo site, built once a worker with the command that users run."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="session")
def root() -> Path:
    """The repository."""
    return ROOT


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The built demo site."""
    site = tmp_path_factory.mktemp("demo") / "site"
    done = subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--strict", "-d", str(site)],
        cwd=ROOT,
        env=os.environ | {"SOURCE_DATE_EPOCH": "1764000000"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return site

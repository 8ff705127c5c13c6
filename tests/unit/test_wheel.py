"""What `pip install` puts on a machine: the package, the theme and the first course, and nothing else."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> zipfile.ZipFile:
    """The wheel, built as pip builds it."""
    folder = tmp_path_factory.mktemp("wheel")
    command = [
        sys.executable,
        "-m",
        "pip",
        "wheel",
        "--quiet",
        "--no-deps",
        "--wheel-dir",
        str(folder),
        str(ROOT),
    ]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return zipfile.ZipFile(next(folder.glob("journeybook-*.whl")))


def test_it_holds_every_file_of_the_package_and_the_theme(wheel: zipfile.ZipFile) -> None:
    held = set(wheel.namelist())
    for folder, installed in (
        (ROOT / "builder", "journeybook"),
        (ROOT / "site_overrides", "journeybook/theme"),
    ):
        for path in folder.rglob("*"):
            left_by_tools = any(
                part == "__pycache__" or part.startswith(".") for part in path.parts[len(folder.parts) :]
            )
            if path.is_file() and not left_by_tools:
                assert f"{installed}/{path.relative_to(folder).as_posix()}" in held


def test_nothing_called_builder_lands_in_site_packages(wheel: zipfile.ZipFile) -> None:
    tops = {name.split("/")[0] for name in wheel.namelist()}
    assert {top for top in tops if not top.endswith(".dist-info")} == {"journeybook"}


def test_mkdocs_finds_the_plugin_and_the_theme(wheel: zipfile.ZipFile) -> None:
    name = next(name for name in wheel.namelist() if name.endswith("entry_points.txt"))
    text = wheel.read(name).decode()
    assert "journeybook = journeybook.mkdocs_adapter:JourneybookPlugin" in text
    assert "journeybook = journeybook.theme" in text
    assert "journeybook = journeybook.cli:main" in text

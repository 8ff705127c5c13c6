"""The trainer's preview: a saved change shows, a fault shows as a page, and mending it brings the course back."""

from __future__ import annotations

import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PATIENCE = 20.0


def fetch(address: str) -> str:
    """The page, or an empty text while the server is not there."""
    try:
        with urllib.request.urlopen(address, timeout=5) as answer:
            return str(answer.read().decode("utf-8"))
    except (urllib.error.URLError, TimeoutError, ConnectionError):
        return ""


def wait_for(address: str, holds: Callable[[str], bool]) -> str:
    """The page once it is as wanted; fails when that does not come."""
    until = time.monotonic() + PATIENCE
    page = ""
    while time.monotonic() < until:
        page = fetch(address)
        if holds(page):
            return page
        time.sleep(0.1)
    pytest.fail(f"{address} did not become what was wanted; it ends in {page[-400:]!r}")


@pytest.fixture
def preview(tmp_path: Path) -> Iterator[tuple[Path, str]]:
    """A first course and the address where `mkdocs serve` shows it."""
    folder = tmp_path / "ours"
    shutil.copytree(ROOT / "builder" / "starter", folder)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [
        sys.executable,
        "-m",
        "mkdocs",
        "serve",
        "-f",
        str(folder / "mkdocs.yml"),
        "-a",
        f"127.0.0.1:{port}",
    ]
    with subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as server:
        try:
            yield folder, f"http://127.0.0.1:{port}/first-course/10-start/change-the-bit.html"
        finally:
            server.terminate()


def test_a_change_shows_a_fault_shows_and_mending_shows_the_course_again(preview: tuple[Path, str]) -> None:
    folder, address = preview
    bank = folder / "quizzes" / "first-course" / "bits.yml"
    wait_for(address, lambda page: "Put these steps in a safe order." in page)

    good = bank.read_text(encoding="utf-8").replace(
        "Put these steps in a safe order.", "Which order is safe?"
    )
    bank.write_text(good, encoding="utf-8")
    changed = wait_for(address, lambda page: "Which order is safe?" in page)
    assert "livereload" in changed, "the page reloads itself in the preview"

    bank.write_text(good.replace("right: b", "right: d"), encoding="utf-8")
    faulty = wait_for(address, lambda page: "Fault Q012" in page)
    assert "quizzes/first-course/bits.yml, line 46" in faulty
    assert "livereload" in faulty, "the page of faults reloads too"
    assert "script-src &#39;self&#39; &#39;unsafe-inline&#39;" in faulty, "and its policy lets it"

    bank.write_text(good, encoding="utf-8")
    wait_for(address, lambda page: "Which order is safe?" in page)

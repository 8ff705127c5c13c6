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
from contextlib import contextmanager
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
def folder(tmp_path: Path) -> Path:
    """A first course."""
    shutil.copytree(ROOT / "builder" / "starter", tmp_path / "ours")
    return tmp_path / "ours"


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The address where `mkdocs serve` shows a lesson of the course."""
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
            yield f"http://127.0.0.1:{port}/first-course/10-start/change-the-bit.html"
        finally:
            server.terminate()


@pytest.fixture
def preview(folder: Path) -> Iterator[tuple[Path, str]]:
    with served(folder) as address:
        yield folder, address


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


def test_a_course_that_starts_with_a_fault_shows_once_it_is_mended(folder: Path) -> None:
    bank = folder / "quizzes" / "first-course" / "bits.yml"
    good = bank.read_text(encoding="utf-8")
    bank.write_text(good.replace("right: b", "right: d"), encoding="utf-8")
    with served(folder) as address:
        front = address[: address.index("/first-course")] + "/"
        wait_for(front, lambda page: "Fault Q012" in page)
        bank.write_text(good, encoding="utf-8")
        wait_for(address, lambda page: "Put these steps in a safe order." in page)


def test_beside_another_plugin_that_looks_at_pages_a_change_shows_as_well(folder: Path) -> None:
    config = folder / "mkdocs.yml"
    config.write_text(config.read_text(encoding="utf-8") + "  - search\n", encoding="utf-8")
    lesson = folder / "course_src" / "first-course" / "modules" / "10-start" / "10-change-the-bit.yml"
    with served(folder) as address:
        wait_for(address, lambda page: "<h1>" in page)
        text = lesson.read_text(encoding="utf-8")
        lesson.write_text(text.replace('title: "', 'title: "Now: ', 1), encoding="utf-8")
        wait_for(address, lambda page: "<h1>Now: " in page)

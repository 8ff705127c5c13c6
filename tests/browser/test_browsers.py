"""Runs each browser test file against the built demo site; the files are JavaScript because they drive two browsers."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).parent
FILES = sorted(path.name for path in HERE.glob("*.test.mjs"))

BROWSERS = {
    "CHROMIUM": ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable"),
    "FIREFOX": ("firefox-esr", "firefox"),
}
"""How each browser may be called, as in ``tools/set_up_tests.sh``; the variable names another."""


def found_browsers() -> dict[str, str]:
    """The path of each browser; of one that is not found nothing, and its tests say so."""
    paths = {
        variable: os.environ.get(variable) or next(filter(None, map(shutil.which, names)), None)
        for variable, names in BROWSERS.items()
    }
    return {variable: path for variable, path in paths.items() if path}


IN_FIREFOX_TOO = (
    "cards.test.mjs",
    "check-keeps.test.mjs",
    "checking.test.mjs",
    "drill.test.mjs",
    "first-view.test.mjs",
    "keyboard.test.mjs",
    "practical.test.mjs",
    "search.test.mjs",
    "search-keyboard.test.mjs",
    "sitting.test.mjs",
    "whole-way.test.mjs",
)
"""Run once more there. The others launch both browsers themselves, or need what only Chromium's driver can do:
scripts switched off, printing, the accessibility tree."""
LONG = {
    "chromium": (
        "accessible-pages.test.mjs",
        "calculators.test.mjs",
        "drawings.test.mjs",
        "quiet.test.mjs",
        "reading-pages.test.mjs",
    ),
    "firefox": (
        "cards.test.mjs",
        "check-keeps.test.mjs",
        "drill.test.mjs",
        "keyboard.test.mjs",
        "practical.test.mjs",
        "search.test.mjs",
        "sitting.test.mjs",
    ),
}
"""Only `make test-long` runs these there, so that the usual run stays below a quarter of an hour: they go through every
page once more, or again through what another file or browser tries."""
RUNS = [
    pytest.param(name, browser, marks=[pytest.mark.long] if name in LONG[browser] else [])
    for browser, names in (("chromium", FILES), ("firefox", IN_FIREFOX_TOO))
    for name in names
]


@pytest.mark.browser
@pytest.mark.parametrize(("name", "browser"), RUNS)
def test_browser_file(name: str, browser: str, demo_site: Path) -> None:
    done = subprocess.run(
        ["node", "--test", "--test-reporter=spec", "--test-concurrency=1", str(HERE / name)],
        env=os.environ
        | found_browsers()
        | {"JOURNEYBOOK_SITE": str(demo_site), "JOURNEYBOOK_BROWSER": browser, "PYTHON": sys.executable},
        capture_output=True,
        text=True,
        timeout=600,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    assert "tests 0" not in done.stdout, f"{name} holds no test"

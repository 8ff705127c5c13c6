"""Runs the shared vectors against the Python, and keeps their files in step with their script."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from make_vectors import FILES, contents
from operations import OPERATIONS

HERE = Path(__file__).parent
CASES = [
    pytest.param(case, id=f"{path.stem}: {case['name']}")
    for path in sorted(HERE.glob("*.json"))
    for case in json.loads(path.read_text(encoding="utf-8"))["cases"]
]


@pytest.mark.parametrize("case", CASES)
def test_vector(case: dict[str, Any]) -> None:
    assert OPERATIONS[case["do"]](case["given"]) == case["expect"]


@pytest.mark.parametrize("name", FILES)
def test_file_is_as_the_script_writes_it(name: str) -> None:
    assert (HERE / f"{name}.json").read_text(encoding="utf-8") == contents(name)


def test_no_file_is_left_over() -> None:
    assert {path.stem for path in HERE.glob("*.json")} == set(FILES)

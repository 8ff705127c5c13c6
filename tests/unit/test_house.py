"""The house stays as it is drawn: imports run one way, and nothing in the builder or the theme knows a trade."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
BUILDER = ROOT / "builder"

# Each stage may import itself and those before it.
STAGES = [
    "diagnostics", "source", "benches", "drawing", "content", "marking", "proof", "audit", "pages", "paper",
    "sittings",
]  # fmt: skip

TRADE_WORDS = re.compile(
    r"\b(respirat\w*|papr|blower|head-?top|visor|weld\w*|fume|hose|pre-?filter|spark|particulate|welder|airflow|"
    r"osha|coshh|niosh|hsg53)\b",
    re.IGNORECASE,
)


def imports_of(path: Path) -> set[str]:
    """Every module of ours that a file imports, by full name."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: imports name the package in full"
            if node.module is not None:
                found.add(node.module)
        elif isinstance(node, ast.Import):
            found.update(alias.name for alias in node.names)
    return {name for name in found if name.split(".")[0] == "journeybook"}


@pytest.mark.parametrize("stage", STAGES)
def test_a_stage_imports_only_itself_and_earlier_stages(stage: str) -> None:
    allowed = set(STAGES[: STAGES.index(stage) + 1])
    for path in sorted((BUILDER / stage).rglob("*.py")):
        for name in imports_of(path):
            parts = name.split(".")
            reached = parts[1] if len(parts) > 1 else ""
            # pages stand last and know the project they are built for.
            if stage == "pages" and name in {"journeybook.project", "journeybook"}:
                continue
            assert reached in allowed, f"{path.relative_to(ROOT)} imports {name}"


def test_paper_takes_plain_data_and_never_looks_into_proof() -> None:
    for path in sorted((BUILDER / "paper").rglob("*.py")):
        assert not any(name.startswith("journeybook.proof") for name in imports_of(path)), path.name


def test_only_the_command_line_and_the_adapter_print() -> None:
    for path in sorted(BUILDER.rglob("*.py")):
        if path.name in {"cli.py", "mkdocs_adapter.py"}:
            continue
        calls = [
            node
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
            if isinstance(node, ast.Call)
        ]
        printing = [c for c in calls if isinstance(c.func, ast.Name) and c.func.id == "print"]
        assert not printing, f"{path.relative_to(ROOT)} prints in line {printing[0].lineno}"


@pytest.mark.parametrize("folder", ["builder", "site_overrides"])
def test_no_word_of_a_trade_stands_in_the_builder_or_the_theme(folder: str) -> None:
    for path in sorted((ROOT / folder).rglob("*")):
        if path.is_file() and path.suffix in {".py", ".html", ".css", ".js", ".md", ".yml", ".po", ".txt"}:
            if path.parent.name == "fonts":
                continue
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
                found = TRADE_WORDS.search(line)
                assert found is None, f"{path.relative_to(ROOT)}:{number} says {found.group()!r}"


def test_no_source_file_has_grown_past_one_concept() -> None:
    for folder in (BUILDER, ROOT / "site_overrides" / "js"):
        for path in sorted(folder.rglob("*")):
            if path.suffix in {".py", ".js"}:
                # The model is one concept in many small tables.
                most = 500 if path == BUILDER / "content" / "model.py" else 400
                lines = len(path.read_text(encoding="utf-8").splitlines())
                assert lines <= most, f"{path.relative_to(ROOT)} has {lines} lines"


def test_the_theme_asks_the_network_for_nothing() -> None:
    reaching = re.compile(
        r"\b(fetch|XMLHttpRequest|WebSocket|EventSource|sendBeacon|importScripts)\s*\(|url\(\s*['\"]?https?:|@import|src=[\"']https?:"
    )
    for path in sorted((ROOT / "site_overrides").rglob("*")):
        if path.suffix in {".html", ".css", ".js"}:
            found = reaching.search(path.read_text(encoding="utf-8"))
            assert found is None, f"{path.relative_to(ROOT)} reaches out: {found.group()!r}"

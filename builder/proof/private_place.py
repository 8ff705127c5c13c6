"""Where nothing private may lie: wherever it would be published or copied."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

_OF_A_SITE = Path("assets") / "journeybook.js"


def published_by(folder: Path, homes: Iterable[Path]) -> str:
    """Say which git work tree, built site or folder of ``homes`` holds ``folder``; empty where none does."""
    full = folder.resolve()
    for home in homes:
        if full.is_relative_to(home.resolve()):
            return f"it is in {home.name}, beside the courses"
    for above in (full, *full.parents):
        if (above / ".git").exists():
            return f"{above} is under version control"
        if (above / _OF_A_SITE).exists():
            return f"{above} is a built site"
    return ""

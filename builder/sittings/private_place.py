"""Where the private file of a sitting may not lie: wherever it would be published or copied."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from journeybook.sittings.sitting import SittingRefused

_OF_A_SITE = Path("assets") / "journeybook.js"


def refuse_place(folder: Path, homes: Iterable[Path]) -> None:
    """Raise SittingRefused where ``folder`` lies in a git work tree, a built site, or one of ``homes``."""
    full = folder.resolve()
    for home in homes:
        if full.is_relative_to(home.resolve()):
            raise _refused(folder, f"it is in {home.name}, beside the courses")
    for above in (full, *full.parents):
        if (above / ".git").exists():
            raise _refused(folder, f"{above} is under version control")
        if (above / _OF_A_SITE).exists():
            raise _refused(folder, f"{above} is a built site")


def _refused(folder: Path, why: str) -> SittingRefused:
    return SittingRefused(
        "H009",
        f"The private file of a sitting is not written into {folder}: {why}, and the file holds the passphrase.",
        "Name a folder of its own with --into, one that only the employer reads.",
    )

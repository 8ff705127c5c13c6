"""Where the private file of a sitting may not lie."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from journeybook.proof.private_place import published_by
from journeybook.sittings.sitting import SittingRefused


def refuse_place(folder: Path, homes: Iterable[Path]) -> None:
    """Raise SittingRefused where ``folder`` lies in a git work tree, a built site, or one of ``homes``."""
    why = published_by(folder, homes)
    if why:
        raise SittingRefused(
            "H009",
            f"The private file of a sitting is not written into {folder}: {why}, and the file holds the passphrase.",
            "Name a folder of its own with --into, one that only the employer reads.",
        )

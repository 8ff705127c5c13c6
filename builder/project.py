"""What a site holds: the courses, the profile and the folders that mkdocs.yml names."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path


@dataclass(frozen=True, kw_only=True)
class Project:
    """The settings of one site."""

    root: Path
    """Folder of mkdocs.yml; every path in a message is relative to it."""
    courses: tuple[str, ...]
    """Names of folders in ``courses_dir``, in the order of the rack."""
    profile: str
    """The jurisdiction the site is built for: the name of a file in each course's ``profiles`` folder."""
    courses_dir: str = "course_src"
    quizzes_dir: str = "quizzes"
    trust: str = ""
    """The file of the trust list, from ``root``; empty where the site knows no signer."""
    today: date | None = None
    """The latest day that has begun; a later one in a file is a warning. Without it no day counts as still to come."""

    def watched(self) -> tuple[Path, ...]:
        """Folders whose changes make the site stale."""
        return (self.root / self.courses_dir, self.root / self.quizzes_dir)

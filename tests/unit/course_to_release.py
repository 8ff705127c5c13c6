"""A course that can be released and sealed, in a folder of its own, for the tests of the commands about sittings."""

from __future__ import annotations

import shutil
from pathlib import Path

from click.testing import CliRunner, Result

from journeybook.cli import main

BASE = Path(__file__).parents[1] / "faults" / "base"
SETTINGS = """\
site_name: Fitting bay
docs_dir: course_src
theme: {name: journeybook}
plugins:
  - journeybook:
      courses: [pillar-drill]
      profile: uk
"""
CLASS = """\
title: "Wednesday class"
date: 2026-12-02
place: "Training room 2"
assessor: {name: "T. Marrable", basis: "Foreman"}
identity: "Works pass"
trainer: "A. Fenwright"
people:
  - {id: "0417", name: "Robin Ashdown"}
  - {id: "0512", name: "Kay Ferriby", extra-percent: 25, oral: true}
"""


class Yard:
    """A project with one course, a class file, and a folder beside it for what is private."""

    def __init__(self, folder: Path, *, approved: bool = True) -> None:
        """Lay it out in ``folder``; the course is sealed and, unless told otherwise, may be released."""
        self.root, self.out = folder / "site", folder / "private"
        shutil.copytree(BASE, self.root)
        self.config = self.root / "mkdocs.yml"
        self.config.write_text(SETTINGS, encoding="utf-8")
        self.course = self.root / "course_src" / "pillar-drill"
        self.class_file = self.root / "class.yml"
        self.class_file.write_text(CLASS, encoding="utf-8")
        if approved:
            self.add("course.yml", 'approved: {by: "A. Fenwright", on: 2026-11-20}\n')
        check = self.root / "quizzes" / "pillar-drill" / "competence-check.yml"
        check.write_text(check.read_text(encoding="utf-8") + "sealed: true\n", encoding="utf-8")

    def add(self, name: str, text: str) -> None:
        """Add lines to a file of the course."""
        path = self.course / name
        path.write_text(path.read_text(encoding="utf-8") + text, encoding="utf-8")

    def change(self, old: str, new: str, name: str = "course.yml") -> None:
        """Change the one place of a file of the course."""
        path = self.course / name
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1
        path.write_text(text.replace(old, new), encoding="utf-8")

    def run(self, *words: object) -> Result:
        """Run a command beside the course; the settings are named by their path."""
        return CliRunner().invoke(main, [*map(str, words), "-f", str(self.config)])

    def release(self) -> Result:
        """Release the course as it stands."""
        result = self.run("release", "pillar-drill")
        assert result.exit_code == 0, result.output
        return result

    def seal(self, *more: object, into: Path | None = None) -> Result:
        """Seal it for the class."""
        return self.run("seal", "pillar-drill", "--class", self.class_file, "--into", into or self.out, *more)

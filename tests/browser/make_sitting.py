"""Makes the sitting that ``sitting.test.mjs`` opens: ``make_sitting.py FOLDER``. Its passphrase is for tests alone."""

from __future__ import annotations

import sys
from datetime import UTC, datetime
from pathlib import Path

from journeybook.making import courses_of
from journeybook.project import Project
from journeybook.sittings import sitting_file
from journeybook.sittings.class_file import read_class_file
from journeybook.sittings.seal import seal_sitting, true_chance
from journeybook.sittings.sitting_page import sitting_page

PASSPHRASE = "guard mango river stone ladder zebra"
CLASS = b"""\
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


def main(folder: Path) -> None:
    """Write both files of the sitting into ``folder``."""
    people, problems = read_class_file(CLASS, "class.yml")
    assert people is not None, problems
    base = Path(__file__).parents[1] / "faults" / "base"
    (ready,), _ = courses_of(Project(root=base, courses=("pillar-drill",), profile="uk"))
    made = seal_sitting(
        ready.course,
        ready.compiled,
        people,
        passphrase=PASSPHRASE,
        now=datetime.now(UTC),
        chance=true_chance(),
    )
    (folder / "class.html").write_bytes(
        sitting_page(ready.course, made.sitting, made.record, PASSPHRASE.split())
    )
    sitting_file.write(folder / "class.sitting.json", made.sitting)


if __name__ == "__main__":
    main(Path(sys.argv[1]))

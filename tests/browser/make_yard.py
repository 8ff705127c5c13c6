"""Makes a firm that gives certificates: ``make_yard.py FOLDER``. By the commands alone, as a trainer would.

``FOLDER/project`` is the demo course with a sealed check, released; ``FOLDER/private`` holds a demo key and the
sitting of two people. The site is built with the firm's trust list, into ``FOLDER/project/site``.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
PASSPHRASE = "guard mango river stone ladder zebra"
CLASS = """\
title: "Wednesday class"
date: {day}
place: "Training room 2"
assessor: {{name: "T. Marrable", basis: "training lead, four years on this unit"}}
identity: "works pass"
trainer: "A. Fenwright"
trained: {day}
people:
  - {{id: "0417", name: "Robin Ashdown", workplace: "Slip 2"}}
  - {{id: "0512", name: "Kay Ferriby"}}
"""


def run(folder: Path, *words: str) -> None:
    """Run a command of ours in ``folder``; whoever asks for a passphrase gets it through a pipe."""
    reading, writing = os.pipe()
    os.write(writing, f"{PASSPHRASE}\n".encode())
    os.close(writing)
    words = tuple(str(reading) if word == "PIPE" else word for word in words)
    subprocess.run(
        [str(Path(sys.executable).with_name("journeybook")), *words],
        cwd=folder,
        check=True,
        pass_fds=(reading,),
    )
    os.close(reading)


def main(folder: Path, day: str) -> None:
    """Make everything up to the morning of the sitting."""
    project, private = folder / "project", folder / "private"
    for name in ("course_src", "quizzes"):
        shutil.copytree(ROOT / name, project / name)
    private.mkdir()
    settings = (ROOT / "mkdocs.yml").read_text(encoding="utf-8")
    (project / "mkdocs.yml").write_text(settings.rstrip() + "\n      trust: trust.json\n", encoding="utf-8")
    check = project / "quizzes" / "powered-respirator" / "competence-check.yml"
    check.write_text(check.read_text(encoding="utf-8") + "sealed: true\n", encoding="utf-8")
    course = project / "course_src" / "powered-respirator" / "course.yml"
    text = course.read_text(encoding="utf-8")
    approved = f'approved: {{by: "T. Marrable", on: {day}}}'
    course.write_text(text.replace('version: "0.1"', f'version: "1.0"\n{approved}'), encoding="utf-8")
    key = str(private / "marrable.pem")
    run(project, "key", "make", key, "--holder", "T. Marrable", "--role", "training lead", "--demo",
        "--passphrase-fd", "PIPE")  # fmt: skip
    run(project, "trust", "start", "trust.json", "--key", key, "--holder", "Quillon Basin Works",
        "--passphrase-fd", "PIPE")  # fmt: skip
    run(project, "release", "powered-respirator")
    (private / "class.yml").write_text(CLASS.format(day=day), encoding="utf-8")
    run(project, "seal", "powered-respirator", "--class", str(private / "class.yml"), "--into", str(private))
    subprocess.run([sys.executable, "-m", "mkdocs", "build", "--quiet"], cwd=project, check=True)


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2])

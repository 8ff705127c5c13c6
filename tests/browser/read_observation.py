"""Reads a saved observation as an employer does: ``read_observation.py FILE``; ``-`` reads codes from standard input.

Prints JSON: what is wrong with the record against the demo course, its fingerprint, and what it is worth.
"""

from __future__ import annotations

import json
import sys
from dataclasses import asdict
from pathlib import Path

from journeybook.making import courses_of
from journeybook.marking.fingerprint import fingerprint
from journeybook.marking.observation import read
from journeybook.marking.observed import misfits, watched
from journeybook.mkdocs_adapter import read_project
from journeybook.proof.record_codes import from_codes

ROOT = Path(__file__).parents[2]


def main(name: str) -> None:
    """Print what the record in a file, or in pasted codes, is worth."""
    if name == "-":
        (data,) = from_codes([sys.stdin.read()]).records
    else:
        data = Path(name).read_bytes()
    observation = read(data)
    ready, _ = courses_of(read_project(ROOT / "mkdocs.yml"))
    (compiled,) = [one.compiled for one in ready if one.course.id == observation.course]
    problems = [
        f"{each.code} {each.message}" for each in misfits(observation, compiled.content, compiled.digest)
    ]
    worth = None if problems else asdict(watched(observation, compiled.content))
    sys.stdout.write(json.dumps({"problems": problems, "fingerprint": fingerprint(data), "worth": worth}))


if __name__ == "__main__":
    main(sys.argv[1])

"""Times loading 10,000 questions with every check against ``yaml.CSafeLoader`` alone on the same files.

Whole processes, in turn (A B A B …). Ours reads, types, checks and cross-checks the whole course, and keeps
the place of every value; the yardstick only makes dictionaries and lists.
"""

from __future__ import annotations

import argparse
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from synthetic import make

OURS = """
import sys
from pathlib import Path
from journeybook.content.loader import load_course
course, problems = load_course(Path(sys.argv[1]), "synthetic", profile="any")
assert course is not None and len(course.questions) == int(sys.argv[2]), problems[:3]
"""
YARDSTICK = """
import sys
from pathlib import Path
import yaml
read = [yaml.load(path.read_bytes(), yaml.CSafeLoader) for path in sorted(Path(sys.argv[1]).rglob("*.yml"))]
assert sum(len(one.get("questions", ())) for one in read) == int(sys.argv[2])
"""


def timed(program: str, folder: Path, questions: int) -> float:
    """Seconds of wall time for one run in its own process."""
    begun = time.perf_counter()
    subprocess.run([sys.executable, "-c", program, str(folder), str(questions)], check=True)
    return time.perf_counter() - begun


def merged(folder: Path) -> None:
    """Put every hundred banks into one: files of a thousand questions, as a large firm would have them."""
    banks = sorted((folder / "quizzes" / "synthetic").glob("bank-*.yml"))
    for start in range(0, len(banks), 100):
        lines = ["title: Bank", "questions:"]
        for bank in banks[start : start + 100]:
            lines += bank.read_text(encoding="utf-8").splitlines()[2:]
            bank.unlink()
        banks[start].write_text("\n".join(lines) + "\n", encoding="utf-8")


def main() -> None:
    """Measure both shapes of the same questions."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--lessons", type=int, default=1000, help="ten questions each")
    parser.add_argument("--runs", type=int, default=5)
    arguments = parser.parse_args()
    print(f"{'files':>28} {'ours s':>9} {'yardstick s':>12} {'ratio':>7}")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        make(folder, arguments.lessons)
        for shape in ("ten questions a file", "a thousand questions a file"):
            if shape.startswith("a "):
                merged(folder / "course")
            pairs = [
                tuple(
                    timed(program, folder / "course", arguments.lessons * 10) for program in (OURS, YARDSTICK)
                )
                for _ in range(arguments.runs + 1)
            ][1:]
            ours, yardstick = (statistics.median(column) for column in zip(*pairs, strict=True))
            ratio = statistics.median(one / other for one, other in pairs)
            print(f"{shape:>28} {ours:>9.2f} {yardstick:>12.2f} {ratio:>7.2f}")


if __name__ == "__main__":
    main()

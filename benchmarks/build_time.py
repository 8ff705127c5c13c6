"""Times a whole build against plain ``mkdocs build`` of the same text as Markdown.

Whole processes, one after the other in turn (A B A B …) so that a drift of the machine touches both,
output on tmpfs where there is one. Prints the median of each and the median of the ratios pair by pair.
"""

from __future__ import annotations

import argparse
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from synthetic import make

SHARED_MEMORY = Path("/dev/shm")


def timed(config: Path, site: Path) -> float:
    """Seconds of wall time for one build in its own process."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "-f", str(config), "-d", str(site)]
    begun = time.perf_counter()
    subprocess.run(command, check=True, env=os.environ | {"SOURCE_DATE_EPOCH": "1700000000"})
    return time.perf_counter() - begun


def compare(lessons: int, runs: int, folder: Path) -> None:
    """Print one row for a course of ``lessons`` lessons."""
    make(folder, lessons)
    ours, plain = folder / "course" / "mkdocs.yml", folder / "plain" / "mkdocs.yml"
    first = timed(ours, folder / "out")
    timed(plain, folder / "out-plain")
    pairs = [(timed(ours, folder / "out"), timed(plain, folder / "out-plain")) for _ in range(runs)]
    mine, other = (statistics.median(column) for column in zip(*pairs, strict=True))
    ratio = statistics.median(a / b for a, b in pairs)
    print(f"{lessons:>8} {lessons * 10:>10} {first:>9.2f} {mine:>9.2f} {other:>9.2f} {ratio:>7.2f}")


def main() -> None:
    """Measure each size in turn."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("sizes", nargs="*", type=int, default=[10, 100, 1000])
    parser.add_argument("--runs", type=int, default=5)
    arguments = parser.parse_args()
    where = SHARED_MEMORY if SHARED_MEMORY.is_dir() else None
    print(f"{'lessons':>8} {'questions':>10} {'first s':>9} {'ours s':>9} {'plain s':>9} {'ratio':>7}")
    for lessons in arguments.sizes:
        with tempfile.TemporaryDirectory(dir=where) as folder:
            compare(lessons, arguments.runs, Path(folder))


if __name__ == "__main__":
    main()

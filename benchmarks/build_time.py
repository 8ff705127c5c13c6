"""Times a whole build against plain ``mkdocs build`` of the same text as Markdown.

Whole processes, one after the other in turn (A B A B …) so that a drift of the machine touches both,
output on tmpfs where there is one. Prints the medians, and the median of the ratios round by round: *cold*
without anything kept from earlier, *unchanged* with the site kept from the build before.
"""

from __future__ import annotations

import argparse
import os
import shutil
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
    rounds = []
    for _ in range(runs + 1):
        shutil.rmtree(folder / "course" / ".cache", ignore_errors=True)
        cold = timed(ours, folder / "out")
        rounds.append((cold, timed(ours, folder / "out"), timed(plain, folder / "out-plain")))
    del rounds[0]  # the first only fills the caches of the machine
    cold, unchanged, other = (statistics.median(column) for column in zip(*rounds, strict=True))
    of_cold = statistics.median(one / three for one, _, three in rounds)
    of_unchanged = statistics.median(two / three for _, two, three in rounds)
    print(
        f"{lessons:>8} {lessons * 10:>10} {cold:>9.2f} {unchanged:>12.2f} {other:>9.2f} {of_cold:>11.2f} "
        f"{of_unchanged:>16.3f}"
    )


def main() -> None:
    """Measure each size in turn."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("sizes", nargs="*", type=int, default=[10, 100, 1000])
    parser.add_argument("--runs", type=int, default=5)
    arguments = parser.parse_args()
    where = SHARED_MEMORY if SHARED_MEMORY.is_dir() else None
    print(
        f"{'lessons':>8} {'questions':>10} {'cold s':>9} {'unchanged s':>12} {'plain s':>9} {'cold ratio':>11} "
        f"{'unchanged ratio':>16}"
    )
    for lessons in arguments.sizes:
        with tempfile.TemporaryDirectory(dir=where) as folder:
            compare(lessons, arguments.runs, Path(folder))


if __name__ == "__main__":
    main()

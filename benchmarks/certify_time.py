"""Times `journeybook certify` for a class: processor time, everything on tmpfs, with papers and with records alone.

The class is that of the tests (a small course, everybody supervised and observed); each round begins anew.
"""

from __future__ import annotations

import argparse
import shutil
import statistics
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "tests" / "unit"))
from certified_class import Shop


def one_round(shop: Shop, people: int, *more: str) -> float:
    """Seconds of the processor for the whole class."""
    shutil.rmtree(shop.into, ignore_errors=True)
    shop.seat(*(shop.sat(shop.place(number)) for number in range(people)))
    begun = time.process_time()
    done = shop.certify(*more)
    spent = time.process_time() - begun
    if f"In all: {people} issued." not in done.output:
        sys.exit(done.output)
    return spent


def main() -> None:
    """Print the medians."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--people", type=int, default=100)
    parser.add_argument("--rounds", type=int, default=3)
    chosen = parser.parse_args()
    there = Path("/dev/shm")
    folder = Path(tempfile.mkdtemp(dir=there if there.is_dir() else None))
    try:
        shop = Shop(folder)
        shop.with_trust()
        for name, more in (("papers and records", ()), ("records alone", ("--record-only",))):
            spent = statistics.median(one_round(shop, chosen.people, *more) for _ in range(chosen.rounds))
            print(f"{name}: {chosen.people} in {spent:.2f} s, {chosen.people / spent:.1f} a second")
    finally:
        shutil.rmtree(folder)


if __name__ == "__main__":
    main()

"""The private file of a sitting: format 1, canonical JSON, read strictly and written whole or not at all.

It holds the passphrase, so nobody else on the machine may read it. Whoever changes one does so with ``update``,
which holds a lock from reading to writing: two people at one shared folder cannot undo each other's work.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from journeybook.marking.canonical import NotCanonical
from journeybook.proof.private_file import put
from journeybook.sittings.sitting import Sitting, SittingRefused
from journeybook.sittings.sitting_format import SIZE_CAP, from_bytes, to_bytes

PATIENCE = 10.0
"""Seconds for which a command waits while another one is at the file."""
_BETWEEN = 0.05


def lock_of(path: Path) -> Path:
    """Return the file whose lock is that of a sitting's file; it stays there, empty."""
    return path.with_name(path.name + ".lock")


def read(path: Path) -> Sitting:
    """Return the sitting of a file; raises SittingRefused, or OSError where it cannot be read."""
    with path.open("rb") as file:
        return from_bytes(file.read(SIZE_CAP + 1))


def write(path: Path, sitting: Sitting) -> None:
    """Write the file whole, readable by its owner alone; the old one stays until the new one is on the disk."""
    with _locked(path):
        _write(path, sitting)


def create(path: Path, sitting: Sitting) -> None:
    """Write the file of a new sitting; raises SittingRefused where one is there already."""
    with _locked(path):
        if path.exists():
            raise SittingRefused(
                "H009",
                f"{path} is there already, and a sitting is never written over.",
                "Give the class file another name, or name another folder with --into.",
            )
        _write(path, sitting)


def update(path: Path, step: Callable[[Sitting], Sitting]) -> Sitting:
    """Read, take a step and write, with nobody else between; return what was written."""
    # A link would be replaced by a file, and who comes by another link would hold another lock.
    path = path.resolve()
    with _locked(path):
        before = read(path)
        after = step(before)
        if after != before:
            _refuse_unreadable(path, before, after)
            _write(path, after)
        return after


def _refuse_unreadable(path: Path, before: Sitting, after: Sitting) -> None:
    """Raise SittingRefused where what is new would keep the whole file from being read ever again."""
    old = {place.ticket: place for place in before.people}
    new = replace(
        after,
        people=tuple(place for place in after.people if old.get(place.ticket) != place),
        refused=after.refused[len(before.refused) :],
    )
    try:
        if from_bytes(to_bytes(new)) == new:
            return
        why = "It would read as something else."
    except (SittingRefused, NotCanonical) as refused:
        why = getattr(refused, "message", "") or str(refused)
    raise SittingRefused(
        "H001",
        f"{path.name} stays as it is, for with this it could not be read again. {why}",
        "Give shorter texts, without characters that cannot be seen.",
    )


def _write(path: Path, sitting: Sitting) -> None:
    put(path, to_bytes(sitting))


@contextmanager
def _locked(path: Path) -> Iterator[None]:
    """Hold the lock that belongs to a file. The system takes it back when a process dies, so none is left behind."""
    # For the owner alone: whoever may read a file may hold its lock, and for ever.
    with os.fdopen(os.open(lock_of(path), os.O_RDWR | os.O_CREAT, 0o600), "rb+", buffering=0) as file:
        hold(file.fileno(), path.name)
        yield


def hold(handle: int, name: str) -> None:
    """Take the lock of an open file, held until that is closed; raises SittingRefused where it takes too long."""
    until = time.monotonic() + PATIENCE
    while not _taken(handle):
        if time.monotonic() > until:
            raise SittingRefused(
                "H005",
                f"Somebody else is at {name}.",
                "Wait until the other command has ended; then try again.",
            )
        time.sleep(_BETWEEN)


def _taken(handle: int) -> bool:
    """Take the lock if nobody holds it."""
    try:
        import fcntl
    except ImportError:
        import msvcrt

        try:
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined]
        except OSError:
            return False
        return True
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    return True

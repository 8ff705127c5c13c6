"""What came back, file by file: read without following links out of a folder, never more than needed, never moved."""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from journeybook.diagnostics.excerpt import visible

READ_CAP = 16 << 20
"""Bytes of one file that are read: a PDF with drawings stays below it, and so do the pasted codes of any class."""
_DEEPEST = 16
_LONGEST_NAME = 200


@dataclass(frozen=True, kw_only=True)
class Arrival:
    """One file that came."""

    name: str
    """Safe to print and to keep: one line of Unicode text."""
    data: bytes = b""
    """At most ``READ_CAP`` bytes."""
    why: str = ""
    """Why it was not read; empty where it was."""


def arrivals(paths: Iterable[Path], *, but: Iterable[Path] = ()) -> Iterator[Arrival]:
    """Yield every file of ``paths``, each once; folders are gone through in the order of their names.

    ``but``: files that lie there and did not come, such as that of the sitting itself.
    """
    seen = {(facts.st_dev, facts.st_ino) for facts in (path.stat() for path in but if path.exists())}
    for path in paths:
        if path.is_dir():
            for file, name, why in _in_folder(path, "", 0):
                yield from _one(file, name, why, seen, follow=False)
        else:
            yield from _one(path, path.name, "", seen, follow=True)


def safe_name(name: str) -> str:
    """A file's name as one line of text: control characters and broken bytes made visible, cut where it is long."""
    told = visible(os.fsencode(name).decode("utf-8", "replace"))
    return told if len(told) <= _LONGEST_NAME else told[: _LONGEST_NAME - 1] + "…"


def _in_folder(folder: Path, above: str, depth: int) -> Iterator[tuple[Path, str, str]]:
    """Yield path, name and why not, of each entry."""
    try:
        entries = sorted(os.scandir(folder), key=lambda entry: os.fsencode(entry.name))
    except OSError as refused:
        yield folder, above or folder.name, f"The folder cannot be opened: {refused.strerror}."
        return
    for entry in entries:
        name = above + entry.name
        if entry.is_symlink():
            yield (
                Path(entry.path),
                name,
                "It is a link; links in a folder are not followed. Name the file itself.",
            )
        elif entry.is_dir(follow_symlinks=False):
            if depth >= _DEEPEST:
                yield Path(entry.path), name, f"Folders are nested more than {_DEEPEST} deep."
            else:
                yield from _in_folder(Path(entry.path), f"{name}/", depth + 1)
        else:
            yield Path(entry.path), name, ""


def _one(path: Path, name: str, why: str, seen: set[tuple[int, int]], *, follow: bool) -> Iterator[Arrival]:
    name = safe_name(name)
    if why:
        yield Arrival(name=name, why=why)
        return
    try:
        # Without waiting for whoever might write into a pipe, and without following a link put there just now.
        flags = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | (0 if follow else getattr(os, "O_NOFOLLOW", 0))
        flags |= getattr(os, "O_BINARY", 0)
        with os.fdopen(os.open(path, flags), "rb") as file:
            facts = os.fstat(file.fileno())
            if not stat.S_ISREG(facts.st_mode):
                yield Arrival(name=name, why="It is no file with contents.")
                return
            if (facts.st_dev, facts.st_ino) in seen:
                return
            seen.add((facts.st_dev, facts.st_ino))
            if facts.st_size > READ_CAP:
                yield Arrival(name=name, why=f"It is larger than {READ_CAP} bytes, which nothing of ours is.")
                return
            data = file.read(READ_CAP)
    except OSError as refused:
        reason = "it is a link" if refused.errno == errno.ELOOP else refused.strerror
        yield Arrival(name=name, why=f"It cannot be read: {reason}.")
        return
    yield Arrival(name=name, data=data)

"""What a load has made of each file, kept for the next load in the same process.

The preview loads a course again at every save, and almost every file is as it was. With a memo, ``load_courses``
opens and reads only what has changed, and what it gives back of the other files is not merely equal: each Question,
Lesson, Block, Figure, Term, Citation, Value and Bank *is* the object of the last load, so that whatever was worked
out from it can be found again by ``is``. A memo holds the files of the last load and no others.
"""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from journeybook.content.memo import Memo

_SURE_AFTER = 2_000_000_000
"""Nanoseconds. Two writes may leave the same time on a file where clocks are coarse (FAT counts in two seconds); so a
file that was written this shortly before it was read is read again, whatever its times say."""


class LoadMemo(Memo):
    """Files by path: their bytes, and what was made of them."""

    def __init__(self) -> None:
        super().__init__()
        self._bytes: dict[str, tuple[tuple[int, ...], bool, bytes]] = {}
        """Size, times and number; whether these are to be trusted; the bytes."""
        self._bytes_now = self._bytes

    def __len__(self) -> int:
        """How many things it holds, the bytes of files among them."""
        return super().__len__() + len(self._bytes)

    @contextmanager
    def one_round(self) -> Iterator[None]:
        """Around a whole load: files that are gone are forgotten at its end."""
        self._bytes_now = {}
        with super().one_round():
            try:
                yield
            finally:
                self._bytes = self._bytes_now

    def bytes_of(self, path: Path | str, seen: os.stat_result) -> bytes:
        """The bytes of a file; not opened where it has the size, times and number it had when it was last read.

        ``seen`` is what the caller has just been told of it. Raises ``OSError`` as opening does.
        """
        name = os.fspath(path)
        marks = (seen.st_size, seen.st_mtime_ns, seen.st_ctime_ns, seen.st_ino, seen.st_dev)
        known = self._bytes.get(name)
        if known is None or not known[1] or known[0] != marks:
            before = time.time_ns()
            with open(name, "rb") as file:  # noqa: PTH123 - a Path for each file costs more than opening it
                data = file.read()
            if known is not None and known[2] == data:
                data = known[2]
            known = (marks, before - max(seen.st_mtime_ns, seen.st_ctime_ns) > _SURE_AFTER, data)
        self._bytes_now[name] = known
        return known[2]

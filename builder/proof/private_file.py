"""Writing a file that only its owner may read: keys, sittings, certificates, papers with questions.

Whole or not at all, and on the disk when the writing ends: whoever is told that it is there may pull the stick out.
"""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

_UNFINISHED = ".unfinished"


def put(path: Path, data: bytes) -> None:
    """Write a file in the place of whatever is there; raises OSError, and then nothing is left of it."""
    unfinished = path.with_name(path.name + _UNFINISHED)
    unfinished.unlink(missing_ok=True)
    try:
        # It comes into being here or nowhere: in a folder of many, a link laid there just now is not written through.
        with os.fdopen(os.open(unfinished, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        unfinished.replace(path)
    except OSError:
        with suppress(OSError):
            unfinished.unlink(missing_ok=True)
        raise
    _keep_name(path.parent)


def _keep_name(folder: Path) -> None:
    """Have the folder's own entry on the disk too, where a system can be asked for that."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)

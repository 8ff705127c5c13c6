"""Writing a file that only its owner may read: keys, sittings, certificates, papers with questions.

What others may read, such as a trust list, is written with the same care.

Whole or not at all, and on the disk when the writing ends: whoever is told that it is there may pull the stick out.
"""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

_UNFINISHED = ".unfinished"
_OWNER, _EVERYBODY = 0o600, 0o644


def put(path: Path, data: bytes, *, for_everybody: bool = False) -> None:
    """Write a file in the place of whatever is there; raises OSError, and then nothing is left of it.

    ``for_everybody`` lets others read it, as far as the system lets them.
    """
    mode = _EVERYBODY if for_everybody else _OWNER
    unfinished = path.with_name(path.name + _UNFINISHED)
    unfinished.unlink(missing_ok=True)
    try:
        # It comes into being here or nowhere: in a folder of many, a link laid there just now is not written through.
        with os.fdopen(os.open(unfinished, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode), "wb") as file:
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

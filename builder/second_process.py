"""A second process for work that needs nothing more from the first.

Rendering keeps one processor busy while a second one idles. A forked process sees everything that was loaded, so
nothing is handed over but the result. Where there is no second processor, or no fork (Windows; macOS, whose system
libraries do not survive one), or anything goes wrong over there, the work is done here: what comes of it is the same.
"""

from __future__ import annotations

import os
import pickle
import sys
import threading
from collections.abc import Callable
from contextlib import suppress
from typing import TypeVar

Result = TypeVar("Result")


def begin(work: Callable[[], Result]) -> Callable[[], Result]:
    """Start ``work`` in a second process; returns what waits for its result.

    The result must be plain enough to be pickled. What ``work`` raises is raised by the waiting.
    """
    if not _may_fork():
        return work
    receive, send = os.pipe()
    try:
        child = os.fork()
    except OSError:  # no memory or no place for another process
        os.close(receive)
        os.close(send)
        return work
    if not child:
        os.close(receive)
        _work_and_leave(work, send)
    os.close(send)

    def wait() -> Result:
        with open(receive, "rb", buffering=1 << 20) as pipe:  # noqa: PTH123 - it is not a file
            data = pipe.read()
        _, status = os.waitpid(child, 0)
        if status or not data:
            return work()
        result: Result = pickle.loads(data)
        return result

    return wait


def _may_fork() -> bool:
    # A thread of this process would be missing in the other, perhaps with a lock in its hand.
    return (
        sys.platform.startswith("linux")
        and hasattr(os, "sched_getaffinity")
        and len(os.sched_getaffinity(0)) > 1
        and threading.active_count() == 1
    )


def _work_and_leave(work: Callable[[], object], send: int) -> None:
    """Do the work, send the result, and end this process without any of the first one's clearing up."""
    status = 1
    with suppress(BaseException):
        with open(send, "wb") as pipe:
            pipe.write(pickle.dumps(work(), pickle.HIGHEST_PROTOCOL))
        status = 0
    os._exit(status)

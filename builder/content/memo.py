"""What was made in the last round of the same work, kept for the next."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator
from contextlib import contextmanager
from typing import TypeVar

Made = TypeVar("Made")


class Memo:
    """Everything is found by what it was made from, so nothing has to be declared stale.

    It holds what the last round asked for and no more. What is kept must be frozen, or never changed.
    """

    def __init__(self) -> None:
        self._made: dict[Hashable, tuple[tuple[object, ...], object]] = {}
        self._made_now = self._made

    def __len__(self) -> int:
        """How many things it holds."""
        return len(self._made)

    def __bool__(self) -> bool:
        """An empty memo is a memo."""
        return True

    @contextmanager
    def one_round(self) -> Iterator[None]:
        """Around a whole round: what was not asked for in it is forgotten at its end."""
        self._made_now = {}
        try:
            yield
        finally:
            self._made = self._made_now

    def same(self, key: Hashable, parts: tuple[object, ...], make: Callable[[], Made]) -> Made:
        """What ``make()`` gave when ``key`` was last made from equal ``parts``; else what it gives now."""
        known = self._made.get(key)
        if known is None or known[0] != parts:
            known = (parts, make())
        self._made_now[key] = known
        return known[1]  # type: ignore[return-value]  # a key is always made by the same call

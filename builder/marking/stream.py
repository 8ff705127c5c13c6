"""Seeded streams: the same seed gives the same draws in every language and for ever.

The generator is xoshiro128** version 1.1 (Blackman and Vigna, Scrambled linear pseudorandom number
generators, ACM Trans. Math. Software 47, 2021, art. 36; version 1.1 multiplies s[1] by 5). Nothing here is a
secret: who holds a seed can draw the form again, and that is what it is for.
"""

from __future__ import annotations

import hashlib
import struct
from collections.abc import Sequence
from typing import Literal, TypeAlias

Purpose: TypeAlias = Literal["options", "variant", "position"]

_MASK = 0xFFFFFFFF
_FOUR_WORDS = struct.Struct(">4I")


class Stream:
    """A run of 32-bit numbers."""

    def __init__(self, state: tuple[int, int, int, int]) -> None:
        """Start from four 32-bit words, not all zero."""
        if not any(state):
            raise ValueError("xoshiro128** cannot start from four zero words")
        self._state = state

    def next(self) -> int:
        """Return the next number, 0 to 2^32 - 1."""
        s0, s1, s2, s3 = self._state
        product = s1 * 5 & _MASK
        scrambled = (product << 7 | product >> 25) * 9 & _MASK
        t = s1 << 9 & _MASK
        s2 ^= s0
        s3 ^= s1
        s1 ^= s2
        s0 ^= s3
        s2 ^= t
        self._state = (s0, s1, s2, (s3 << 11 | s3 >> 21) & _MASK)
        return scrambled

    def below(self, bound: int) -> int:
        """Return a number from 0 to ``bound`` - 1, each equally likely; ``bound`` is 1 to 2^32.

        Numbers below ``2^32 mod bound`` are thrown away, so that the rest divides evenly.
        """
        if not 1 <= bound <= 1 << 32:
            raise ValueError("a bound is from 1 to 2^32")
        threshold = (1 << 32) % bound
        while True:
            number = self.next()
            if number >= threshold:
                return number % bound

    def shuffled(self, things: Sequence[str]) -> list[str]:
        """Return ``things`` in a drawn order: Fisher-Yates, from the last place down."""
        order = list(things)
        for last in range(len(order) - 1, 0, -1):
            other = self.below(last + 1)
            order[last], order[other] = order[other], order[last]
        return order


def stream(seed: str, question_id: str, purpose: Purpose) -> Stream:
    """Return the stream of one question for one purpose.

    Its state is the first 16 bytes of SHA-256(seed + "\\n" + id + "\\n" + purpose), as big-endian words.
    """
    digest = hashlib.sha256(f"{seed}\n{question_id}\n{purpose}".encode()).digest()
    return Stream(_FOUR_WORDS.unpack_from(digest))


def rank(seed: str, question_id: str) -> tuple[str, str]:
    """Return where a question stands for this seed: SHA-256(seed + "\\n" + id) in hex, then the id.

    Sorting by it needs no generator and does not depend on the order of files. The idea is that of RFC 3797,
    with SHA-256 for MD5.
    """
    return hashlib.sha256(f"{seed}\n{question_id}".encode()).hexdigest(), question_id

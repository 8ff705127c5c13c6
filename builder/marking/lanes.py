"""Many seeded streams at one time: the numbers of ``stream`` for every question of a form, in lanes of one integer.

Adding, shifting and masking an integer of five hundred bytes takes Python hardly longer than one of four, so sixty
generators cost about as much as one. Each lane is 64 bits wide and holds a word of 32, so that nothing runs over into
its neighbour. ``tests/property/test_quick_remark.py`` holds the numbers to those of ``stream``.
"""

from __future__ import annotations

import struct
from collections.abc import Sequence
from functools import lru_cache

_WORD = 0xFFFFFFFF
_LANE = 8


@lru_cache(maxsize=512)
def _mask(count: int) -> int:
    """The word of every lane."""
    return int.from_bytes(_WORD.to_bytes(_LANE, "big") * count, "big")


@lru_cache(maxsize=512)
def _unpacked(count: int) -> struct.Struct:
    return struct.Struct(f">{count}Q")


def first_numbers(digests: Sequence[bytes]) -> tuple[int, ...]:
    """The first number of the stream of each digest (32 bytes each)."""
    count = len(digests)
    if not count:
        return ()
    mask = _mask(count)
    s1 = int.from_bytes(_halves(digests)[0::4].tobytes(), "big") & mask
    return _unpacked(count).unpack(_scrambled(s1, mask).to_bytes(_LANE * count, "big"))


def numbers(digests: Sequence[bytes], steps: int) -> list[tuple[int, ...]]:
    """The first ``steps`` numbers of each stream: one tuple a step, one number a digest."""
    count = len(digests)
    if not count:
        return []
    mask = _mask(count)
    halves = _halves(digests)
    front, back = (int.from_bytes(halves[part::4].tobytes(), "big") for part in (0, 1))
    s0, s1, s2, s3 = front >> 32 & mask, front & mask, back >> 32 & mask, back & mask
    unpack = _unpacked(count).unpack
    found = []
    for step in range(steps):
        found.append(unpack(_scrambled(s1, mask).to_bytes(_LANE * count, "big")))
        if step == steps - 1:
            break
        t = s1 << 9 & mask
        s2 ^= s0
        s3 ^= s1
        s1 ^= s2
        s0 ^= s3
        s2 ^= t
        turned = s3 << 11
        s3 = turned & mask | turned >> 32 & mask
    return found


def _halves(digests: Sequence[bytes]) -> memoryview:
    """Eight bytes an entry: four entries a digest, of which the first two are the state."""
    return memoryview(b"".join(digests)).cast("Q")


def _scrambled(s1: int, mask: int) -> int:
    # rotl(s1 * 5, 7) * 9. A word times 5 has 35 bits and shifted by 7 it has 42, so all fits into its lane.
    product = s1 * 5 & mask
    turned = product << 7
    return ((turned & mask) + (turned >> 32 & mask)) * 9 & mask

"""Base45: bytes in the letters that a QR code packs most tightly.

Source: RFC 9285 (2022), sections 4.1 and 4.2. Twin of site_overrides/js/pure/base45.js.
"""

from __future__ import annotations

import struct

ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"
_VALUES = {letter: value for value, letter in enumerate(ALPHABET)}


def encode(data: bytes) -> str:
    """Return the text for ``data``: three letters for two bytes, two for a last single one."""
    letters: list[str] = []
    for at in range(0, len(data), 2):
        pair = data[at : at + 2]
        value = int.from_bytes(pair, "big")
        for _ in range(len(pair) + 1):
            value, digit = divmod(value, 45)
            letters.append(ALPHABET[digit])
    return "".join(letters)


def decode(text: str) -> bytes:
    """Return the bytes of ``text``; raise ValueError for a strange letter, a strange length, or a group too large."""
    if len(text) % 3 == 1:
        raise ValueError("This is not base45: its length is not one of base45.")
    try:
        digits = bytes(map(_VALUES.__getitem__, text))
    except KeyError as error:
        raise ValueError("This is not base45: it holds a letter that base45 has not.") from error
    whole = len(digits) // 3 * 3
    threes = zip(digits[0:whole:3], digits[1:whole:3], digits[2:whole:3], strict=True)
    pairs = [first + 45 * second + 45 * 45 * third for first, second, third in threes]
    last = [digits[whole] + 45 * digits[whole + 1]] if whole < len(digits) else []
    if max(pairs, default=0) >= 1 << 16 or max(last, default=0) >= 1 << 8:
        raise ValueError("This is not base45: a group is too large.")
    return struct.pack(f">{len(pairs)}H", *pairs) + bytes(last)

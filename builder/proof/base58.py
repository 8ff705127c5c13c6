"""Base58 with Bitcoin's alphabet, as multibase ``z`` and did:key use it (W3C Controlled Identifiers 1.0, 2.4).

Twin of ``site_overrides/js/pure/base58.js``.
"""

from __future__ import annotations

ALPHABET = "123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz"
LONGEST = 128
"""Signs that are read: a signature takes 88, and the time grows with the square of the length."""
_CHUNK = 10
_VALUES = {sign: value for value, sign in enumerate(ALPHABET)}


def encode(data: bytes) -> str:
    """Return the signs of ``data``; each zero byte in front is a ``1``."""
    number = int.from_bytes(data, "big")
    signs: list[str] = []
    while number:
        number, value = divmod(number, 58)
        signs.append(ALPHABET[value])
    zeros = len(data) - len(data.lstrip(b"\0"))
    return "1" * zeros + "".join(reversed(signs))


def decode(text: str) -> bytes:
    """Return the bytes of ``text``; raise ValueError for a sign outside the alphabet, and for more than LONGEST."""
    if len(text) > LONGEST:
        raise ValueError(f"more than {LONGEST} signs of base58")
    number = 0
    try:
        # Ten signs at a time: they fit a machine word, and the long number is multiplied less often.
        for start in range(0, len(text), _CHUNK):
            piece = 0
            for sign in text[start : start + _CHUNK]:
                piece = piece * 58 + _VALUES[sign]
            number = number * 58 ** min(_CHUNK, len(text) - start) + piece
    except KeyError as error:
        raise ValueError(f"{error.args[0]!r} is no sign of base58") from None
    zeros = len(text) - len(text.lstrip("1"))
    return bytes(zeros) + number.to_bytes((number.bit_length() + 7) // 8, "big")

"""How a person compares two records by eye: 80 bits of SHA-256 in four groups of four characters.

The alphabet is base32 of RFC 4648, section 6: capitals and 2 to 7, so that 0 and O, 1 and I cannot be mixed
up. Eighty bits are ample against an accident, and against anyone who has to match one given record.
"""

from __future__ import annotations

import base64
import hashlib

BYTES = 10


def fingerprint(record: bytes) -> str:
    """Return ``ABCD-EFGH-IJKL-MNOP`` for the bytes of a record."""
    letters = base64.b32encode(hashlib.sha256(record).digest()[:BYTES]).decode("ascii")
    return "-".join(letters[start : start + 4] for start in range(0, len(letters), 4))

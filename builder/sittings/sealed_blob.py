"""Sealing bytes under a passphrase: format ``journeybook sealed 1``; twin of ``js/view/sitting-seal.js``.

The key is PBKDF2-HMAC-SHA256 of the passphrase with 600,000 rounds, the cipher AES-256-GCM. What stands beside the
data is authenticated with it, so no fact of the head can be changed either. A passphrase enters by the first four
letters of each word, which tell the words of the list apart: so a slip further on, or capitals, do no harm.
"""

from __future__ import annotations

import base64
import binascii
import gzip
import hashlib
from collections.abc import Mapping
from typing import Any

from journeybook.marking import canonical
from journeybook.marking.kind import Json

FORMAT = "journeybook sealed 1"
ITERATIONS = 600_000
SALT_BYTES = 16
IV_BYTES = 12
TAG_BYTES = 16
CONTENT_CAP = 64 << 20
"""Bytes of what was sealed."""


class NotOpened(ValueError):  # noqa: N818 - it says what did not happen
    """A wrong passphrase, or something that was changed: the cipher cannot tell which."""


def typed_form(passphrase: str) -> bytes:
    """Return what of a passphrase enters the key: each word's first four letters, small, single spaces between."""
    return " ".join(word[:4] for word in passphrase.lower().split()).encode()


def key_of(passphrase: str, salt: bytes, iterations: int = ITERATIONS) -> bytes:
    """Return the 32 bytes of the key."""
    return hashlib.pbkdf2_hmac("sha256", typed_form(passphrase), salt, iterations, 32)


def seal(head: Mapping[str, Json], content: Json, key: bytes, *, salt: bytes, iv: bytes) -> dict[str, Json]:
    """Return the record with ``content`` sealed in it; ``head`` are the facts that may be read by anyone.

    ``salt`` and ``iv`` must be fresh for each sealing, ``key`` is that of ``key_of`` with this salt.
    """
    from cryptography.hazmat.primitives.ciphers.aead import AESGCM

    record = with_methods(head, salt, iv)
    # Without a time in its head, the same content gives the same bytes.
    packed = gzip.compress(canonical_content(content), 9, mtime=0)
    return record | {"data": to_text(AESGCM(key).encrypt(iv, packed, canonical.write(record)))}


def canonical_content(content: Json) -> bytes:
    """Return the bytes of what is sealed."""
    return canonical.write(content)


def with_methods(head: Mapping[str, Json], salt: bytes, iv: bytes) -> dict[str, Json]:
    """Return the head with how it was sealed: all that is authenticated beside the data."""
    return {
        "format": FORMAT,
        **head,
        "kdf": {"name": "PBKDF2-SHA256", "iterations": ITERATIONS, "salt": to_text(salt)},
        "cipher": "AES-256-GCM",
        "iv": to_text(iv),
    }


def unseal(data: bytes, passphrase: str) -> Any:
    """Return the content of a record's canonical bytes. Raises NotOpened, also for what is no such record."""
    record = read_record(data)
    return unseal_with(record, key_of(passphrase, from_text(record["kdf"]["salt"])))


def read_record(data: bytes) -> dict[str, Any]:
    """Return the members of a sealed record. Raises NotOpened for anything else."""
    try:
        record = canonical.read(data, canonical.COMPILED_SIZE_CAP)
    except canonical.NotCanonical as refused:
        raise NotOpened(refused.detail) from refused
    if not isinstance(record, dict) or record.get("format") != FORMAT:
        raise NotOpened(f"It does not say that it is “{FORMAT}”.")
    kdf: Any = record.get("kdf")
    methods = isinstance(kdf, dict) and sorted(kdf) == ["iterations", "name", "salt"]
    if (
        not methods
        or (kdf["name"], kdf["iterations"], record.get("cipher"))
        != ("PBKDF2-SHA256", ITERATIONS, "AES-256-GCM")
        or len(from_text(kdf["salt"])) != SALT_BYTES
        or len(from_text(record.get("iv"))) != IV_BYTES
        or len(from_text(record.get("data"))) <= TAG_BYTES
    ):
        raise NotOpened("It is not sealed as this program seals.")
    return record


def unseal_with(record: Mapping[str, Any], key: bytes) -> Any:
    """Return the content of a record that ``read_record`` gave. Raises NotOpened."""
    from cryptography.exceptions import InvalidTag
    from cryptography.hazmat.primitives.ciphers.aead import AESGCM

    head = {name: value for name, value in record.items() if name != "data"}
    try:
        packed = AESGCM(key).decrypt(
            from_text(record["iv"]), from_text(record["data"]), canonical.write(head)
        )
    except InvalidTag as refused:
        raise NotOpened("The passphrase is another one, or the file was changed.") from refused
    return canonical.read(gzip.decompress(packed), CONTENT_CAP)


def to_text(data: bytes) -> str:
    """Base64 for addresses, without padding (RFC 4648, 5)."""
    return base64.urlsafe_b64encode(data).decode("ascii").rstrip("=")


def from_text(text: object) -> bytes:
    """The bytes of such a text. Raises NotOpened where it is none, or not the only text of its bytes."""
    if not isinstance(text, str):
        raise NotOpened("A member that should be base64 is none.")
    try:
        data = base64.b64decode(text + "=" * (-len(text) % 4), altchars=b"-_", validate=True)
    except (binascii.Error, ValueError) as refused:
        raise NotOpened("A member that should be base64 is none.") from refused
    if to_text(data) != text:
        raise NotOpened("A member that should be base64 is none.")
    return data

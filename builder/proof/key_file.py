"""The file of a signing key: encrypted, readable by its owner alone, never beside what is published.

PKCS#8 EncryptedPrivateKeyInfo (RFC 5958) under PBES2 (RFC 8018, 6.2) with scrypt (RFC 7914, 7) and AES-256-CBC, as PEM.
Written by hand, because ``cryptography`` itself writes PBKDF2 with 2,048 rounds only; opened by it and by openssl.
"""

from __future__ import annotations

import base64
import hashlib
import secrets
import unicodedata
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from journeybook.proof.private_file import put
from journeybook.proof.private_place import published_by

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

COST, BLOCK, PARALLEL = 2**14, 8, 5
"""scrypt's N, r and p: 16 MiB, a fifth of a second; equal in strength to N = 2^17, p = 1, which openssl 3.0 refuses."""
SIZE_CAP = 8192
"""Bytes. A key file takes about 400."""
_MEMORY = 64 << 20
_LABEL = "ENCRYPTED PRIVATE KEY"
_SEQUENCE, _OCTETS, _INTEGER, _OBJECT = 0x30, 0x04, 0x02, 0x06
# Object identifiers, by their DER contents.
_PBES2 = bytes.fromhex("2a864886f70d01050d")
_SCRYPT = bytes.fromhex("2b06010401da47040b")
_AES_256_CBC = bytes.fromhex("60864801650304012a")
_PLAIN_HEAD = bytes.fromhex("302e020100300506032b657004220420")
"""RFC 8410, 7: what stands before the 32 bytes of the seed in a PrivateKeyInfo of Ed25519."""


class KeyRefused(ValueError):  # noqa: N818 - what happened to the key
    """A key that is not written there, or a file that gives no key."""

    def __init__(self, reason: str, detail: str) -> None:
        """Keep why: ``reason`` is one word for programs, ``detail`` sentences for people.

        Reasons: ``place``, ``there``, ``missing``, ``unreadable``, ``passphrase``, ``kind``.
        """
        self.reason = reason
        self.detail = detail
        super().__init__(detail)


def write_key(path: Path, seed: bytes, passphrase: str, plate: str = "", *, anew: bool = False) -> None:
    """Write the key of a 32-byte ``seed`` to ``path``, for its owner's eyes alone; it is on the disk when this returns.

    The lines of its ``plate`` stand above it. Raises KeyRefused where something is there already: a key is never
    written over, but ``anew`` puts the same key under another passphrase. Whether the place is right is for
    ``refuse_place``.
    """
    if path.exists() and not anew:
        raise KeyRefused(
            "there", f"{path} is there already, and a key is never written over. Name another file."
        )
    hidden = pem(encrypted(seed, passphrase, secrets.token_bytes(16), secrets.token_bytes(16)))
    put(path, plate.encode("utf-8") + hidden)


def open_key(path: Path, passphrase: str) -> Ed25519PrivateKey:
    """Return the key in ``path``; raise KeyRefused where there is none, or the passphrase does not open it."""
    from cryptography.exceptions import UnsupportedAlgorithm
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
    from cryptography.hazmat.primitives.serialization import load_pem_private_key

    data = bytes_of(path)
    start = data.find(f"-----BEGIN {_LABEL}-----".encode())
    if start < 0:
        raise KeyRefused("unreadable", f"{path} is not an encrypted key.")
    try:
        private = load_pem_private_key(data[start:], _secret(passphrase))
    except (ValueError, TypeError, UnsupportedAlgorithm, MemoryError) as error:
        raise KeyRefused(
            "passphrase", f"The passphrase does not open {path}, or the file is damaged."
        ) from error
    if not isinstance(private, Ed25519PrivateKey):
        raise KeyRefused("kind", f"{path} is a key of another kind than Ed25519.")
    return private


def bytes_of(path: Path) -> bytes:
    """Return what stands in a key file or on a plate; raise KeyRefused where it cannot be read or is too long."""
    try:
        with path.open("rb") as file:
            data = file.read(SIZE_CAP + 1)
    except OSError as error:
        raise KeyRefused("missing", f"{path} cannot be read: {error.strerror or error}.") from error
    if len(data) > SIZE_CAP:
        raise KeyRefused("unreadable", f"{path} is not an encrypted key.")
    return data


def refuse_place(path: Path, homes: Iterable[Path]) -> None:
    """Raise KeyRefused where ``path`` lies in a git work tree, a built site, or a folder of ``homes``."""
    folder = path.resolve().parent
    why = published_by(folder, homes)
    site = next((above for above in (folder, *folder.parents) if (above / "mkdocs.yml").exists()), None)
    if why or site is not None:
        raise _misplaced(path, why or f"{site} is the folder of a site")


def _misplaced(path: Path, why: str) -> KeyRefused:
    return KeyRefused(
        "place",
        f"A key is not written to {path}: {why}, and whoever copies that would have the key. "
        "Name a folder that only the signer reads.",
    )


def encrypted(seed: bytes, passphrase: str, salt: bytes, iv: bytes, parallel: int = PARALLEL) -> bytes:
    """Return the DER of the EncryptedPrivateKeyInfo of a 32-byte ``seed``; ``salt`` and ``iv`` serve once."""
    from cryptography.hazmat.primitives.ciphers import Cipher, algorithms, modes

    if len(seed) != 32:
        raise ValueError("a seed of Ed25519 is 32 bytes")
    key = hashlib.scrypt(
        _secret(passphrase), salt=salt, n=COST, r=BLOCK, p=parallel, maxmem=_MEMORY, dklen=32
    )
    encryptor = Cipher(algorithms.AES256(key), modes.CBC(iv)).encryptor()
    # 48 bytes are whole blocks, so the padding of PKCS#7 is a block of its own.
    hidden = encryptor.update(_PLAIN_HEAD + seed + bytes([16]) * 16) + encryptor.finalize()
    numbers = b"".join(_der(_INTEGER, _whole(each)) for each in (COST, BLOCK, parallel))
    derivation = _der(_SEQUENCE, _der(_OBJECT, _SCRYPT) + _der(_SEQUENCE, _der(_OCTETS, salt) + numbers))
    scheme = _der(_SEQUENCE, _der(_OBJECT, _AES_256_CBC) + _der(_OCTETS, iv))
    algorithm = _der(_SEQUENCE, _der(_OBJECT, _PBES2) + _der(_SEQUENCE, derivation + scheme))
    return _der(_SEQUENCE, algorithm + _der(_OCTETS, hidden))


def pem(der: bytes) -> bytes:
    """Return the text of RFC 7468 for an encrypted key."""
    body = base64.b64encode(der).decode("ascii")
    lines = [body[at : at + 64] for at in range(0, len(body), 64)]
    return "\n".join([f"-----BEGIN {_LABEL}-----", *lines, f"-----END {_LABEL}-----", ""]).encode("ascii")


def _secret(passphrase: str) -> bytes:
    """The bytes of a passphrase, the same however a keyboard puts an accent on a letter."""
    if not passphrase:
        raise KeyRefused("passphrase", "The passphrase is empty.")
    return unicodedata.normalize("NFC", passphrase).encode("utf-8")


def _der(tag: int, contents: bytes) -> bytes:
    size = len(contents)
    length = bytes([size]) if size < 128 else bytes([0x81, size])
    return bytes([tag]) + length + contents


def _whole(value: int) -> bytes:
    """The contents of a DER integer that is not negative."""
    return value.to_bytes(value.bit_length() // 8 + 1, "big")

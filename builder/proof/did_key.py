"""did:key of Ed25519: the name of a signer is the public key itself (W3C CCG, The did:key Method)."""

from __future__ import annotations

from journeybook.proof import base58

PREFIX = "did:key:z"
_ED25519 = b"\xed\x01"
"""Multicodec 0xed as a varint: an Ed25519 public key."""


class NotAKey(ValueError):  # noqa: N818 - it says what the text is not
    """A text that is no did:key of Ed25519; the text of the error says why, for people."""


def did_of(public: bytes) -> str:
    """Return the did of 32 public bytes."""
    if len(public) != 32:
        raise ValueError("a public key of Ed25519 is 32 bytes")
    return PREFIX + base58.encode(_ED25519 + public)


def public_of(did: str) -> bytes:
    """Return the 32 public bytes of ``did``; raise NotAKey where it is no did:key of Ed25519."""
    if not did.startswith(PREFIX):
        raise NotAKey("The signer is not a did:key.")
    try:
        data = base58.decode(did.removeprefix(PREFIX))
    except ValueError as error:
        raise NotAKey("The signer's key is not base58, or too long.") from error
    if len(data) != 34 or not data.startswith(_ED25519):
        raise NotAKey("The signer is not a key of Ed25519.")
    return data[2:]


def method_of(did: str) -> str:
    """Return the verification method of ``did``: the one key it has, named as did:key names it."""
    return f"{did}#{did.removeprefix('did:key:')}"

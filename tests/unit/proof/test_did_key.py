"""A did:key is taken only where it is one of Ed25519, in full."""

from __future__ import annotations

import pytest

from journeybook.proof import base58, did_key

PUBLIC = bytes(range(32))


def test_the_key_comes_back_from_its_did() -> None:
    assert did_key.public_of(did_key.did_of(PUBLIC)) == PUBLIC


def test_the_method_repeats_the_key_after_the_did() -> None:
    did = did_key.did_of(PUBLIC)
    assert did_key.method_of(did) == f"{did}#{did[len('did:key:') :]}"


@pytest.mark.parametrize("length", [0, 31, 33])
def test_a_key_of_another_length_has_no_did(length: int) -> None:
    with pytest.raises(ValueError, match="32 bytes"):
        did_key.did_of(bytes(length))


@pytest.mark.parametrize(
    ("did", "why"),
    [
        ("", "not a did:key"),
        ("did:web:example.com", "not a did:key"),
        ("DID:KEY:z6Mk", "not a did:key"),
        ("did:key:z0", "not base58"),
        ("did:key:z" + "1" * 129, "too long"),
        ("did:key:z", "not a key of Ed25519"),
        ("did:key:z" + base58.encode(b"\xed\x01" + PUBLIC[1:]), "not a key of Ed25519"),
        ("did:key:z" + base58.encode(b"\xed\x01" + PUBLIC + b"\0"), "not a key of Ed25519"),
        ("did:key:z" + base58.encode(b"\xec\x01" + PUBLIC), "not a key of Ed25519"),
    ],
)
def test_anything_else_is_refused(did: str, why: str) -> None:
    with pytest.raises(did_key.NotAKey, match=why):
        did_key.public_of(did)

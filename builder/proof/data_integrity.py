"""Data Integrity proofs ``eddsa-jcs-2022``: signing a document, and whether a signed one is what its signer signed.

Source: W3C Recommendation "Data Integrity EdDSA Cryptosuites v1.0" (15 May 2025), 3.3. What holds:
- the proof says only what this suite knows, once: its type, suite, purpose, signer, signature (and when);
- the signer is a did:key named as did:key names its only key, and the same as the document's issuer;
- where the proof repeats the @context, the document's begins with it;
- the signature is Ed25519 (RFC 8032) over SHA-256 of the canonical proof and SHA-256 of the canonical document,
  by a key that is not weak, and it is not a second form of the same signature (``cryptography`` refuses s >= L);
- everything is canonical JSON of ours (integers, capped depth), so two readers cannot see two things in it.
A signature alone never says who somebody is: that is for the trust list.
Twin of site_overrides/js/pure/data-integrity.js.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from journeybook.marking import canonical
from journeybook.marking.kind import Json
from journeybook.proof import base58
from journeybook.proof.did_key import NotAKey, did_of, method_of, public_of

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

CREDENTIALS = "https://www.w3.org/ns/credentials/v2"
UNDEFINED_TERMS = "https://www.w3.org/ns/credentials/undefined-terms/v2"
CONTEXT: list[Json] = [CREDENTIALS, UNDEFINED_TERMS]
"""VC Data Model 2.0, 5.2 (Extensibility): what a record says whose terms no hosted vocabulary defines."""
MOST_PROOFS = 4
_PRIME = 2**255 - 19
_SIGN = 1 << 255
_EIGHTH = 0x7A03AC9277FDC74EC6CC392CFA53202A0F67100D760B3CBA4FD84D3D706A17C7
_WEAK = frozenset({0, 1, _PRIME - 1, _EIGHTH, _PRIME - _EIGHTH})
"""The heights (y) of the points of small order on edwards25519 (RFC 8032, 5.1): the keys of nobody."""
_MEMBERS = frozenset(
    {"@context", "created", "cryptosuite", "proofPurpose", "proofValue", "type", "verificationMethod"}
)


class NotGenuine(ValueError):  # noqa: N818 - it says what the document is not
    """A document whose proof does not hold."""

    def __init__(self, reason: str, detail: str) -> None:
        """Keep why: ``reason`` is one word for programs, ``detail`` a sentence for people.

        Reasons: ``proof``, ``member``, ``kind``, ``purpose``, ``signer``, ``key``, ``context``, ``signature``,
        ``form``, ``altered``, ``issuer``.
        """
        self.reason = reason
        self.detail = detail
        super().__init__(detail)


def sign(document: Mapping[str, Json], *private: Ed25519PrivateKey) -> dict[str, Json]:
    """Return the document with its proof: one object for one key, a list for several.

    The document has no ``proof`` yet; raises ValueError where it has, and canonical.NotCanonical for what
    evidence may not hold.
    """
    if "proof" in document:
        raise ValueError("The document is signed already.")
    proofs: list[Json] = [_proof(document, key) for key in private]
    return {**document, "proof": proofs[0] if len(proofs) == 1 else proofs}


def _proof(document: Mapping[str, Json], private: Ed25519PrivateKey) -> dict[str, Json]:
    options: dict[str, Json] = {
        "type": "DataIntegrityProof",
        "cryptosuite": "eddsa-jcs-2022",
        "verificationMethod": method_of(did_of(private.public_key().public_bytes_raw())),
        "proofPurpose": "assertionMethod",
    }
    if "@context" in document:
        options["@context"] = document["@context"]
    signature = private.sign(hash_data(document, options))
    return {**options, "proofValue": "z" + base58.encode(signature)}


def hash_data(document: Mapping[str, Json], options: Mapping[str, Json]) -> bytes:
    """Return the 64 bytes that are signed (3.3.4): of the proof without its value, then of the document."""
    return _digest(options) + _digest(document)


def verify(document: Mapping[str, Json]) -> str:
    """Return the did that signed the document, which is its issuer, by its one proof; raise NotGenuine otherwise."""
    proof = document.get("proof")
    if not isinstance(proof, Mapping):
        raise NotGenuine("proof", "There is not exactly one proof.")
    return _issued(document, (_signer(_unsigned(document), proof),))[0]


def verify_all(document: Mapping[str, Json]) -> tuple[str, ...]:
    """Return the dids of a document with one proof or a list of them; each has to hold, and one is the issuer's.

    Raises NotGenuine.
    """
    proof = document.get("proof")
    proofs: Sequence[Any] = proof if isinstance(proof, list) else [proof]
    if not 1 <= len(proofs) <= MOST_PROOFS:
        raise NotGenuine("proof", f"There are not between one and {MOST_PROOFS} proofs.")
    unsigned = _unsigned(document)
    dids = tuple(_signer(unsigned, each) for each in proofs)
    return _issued(document, dids)


def signed_by(document: Mapping[str, Json]) -> str:
    """Return the did whose one proof holds, whoever the issuer is; for documents of others. Raises NotGenuine."""
    proof = document.get("proof")
    if not isinstance(proof, Mapping):
        raise NotGenuine("proof", "There is not exactly one proof.")
    return _signer(_unsigned(document), proof)


def _issued(document: Mapping[str, Json], dids: tuple[str, ...]) -> tuple[str, ...]:
    if document.get("issuer") not in dids:
        raise NotGenuine("issuer", "Somebody else signed it than the issuer it names.")
    return dids


def _unsigned(document: Mapping[str, Json]) -> dict[str, Json]:
    return {name: value for name, value in document.items() if name != "proof"}


def _signer(unsigned: dict[str, Json], proof: object) -> str:
    """The did of one proof that holds for the document without its proofs."""
    if not isinstance(proof, Mapping):
        raise NotGenuine("proof", "There is no proof.")
    if not proof.keys() <= _MEMBERS:
        raise NotGenuine("member", "The proof holds something unknown.")
    if proof.get("type") != "DataIntegrityProof" or proof.get("cryptosuite") != "eddsa-jcs-2022":
        raise NotGenuine("kind", "The proof is of an unknown kind.")
    if proof.get("proofPurpose") != "assertionMethod":
        raise NotGenuine("purpose", "The proof has another purpose.")
    did, key = _named(proof.get("verificationMethod"))
    options = {name: value for name, value in proof.items() if name != "proofValue"}
    secured = unsigned
    if "@context" in options:
        # 3.3.2, step 4: the document's context begins with the proof's, which is then the one that was signed.
        given, held = _listed(options["@context"]), _listed(unsigned.get("@context"))
        if _form(held[: len(given)]) != _form(given):
            raise NotGenuine("context", "The proof has another context.")
        secured = {**unsigned, "@context": options["@context"]}
    _check(key, _signature(proof.get("proofValue")), secured, options)
    return did


def _named(method: object) -> tuple[str, Ed25519PublicKey]:
    if not isinstance(method, str):
        raise NotGenuine("signer", "The signer is missing.")
    did = method.partition("#")[0]
    if method != method_of(did):
        raise NotGenuine("signer", "The signer is not named as a did:key is.")
    return did, public_key(did)


@lru_cache(maxsize=256)
def public_key(did: str) -> Ed25519PublicKey:
    """Return the key that a did names, kept: a firm's certificates are signed by a handful. Raises NotGenuine."""
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    try:
        public = public_of(did)
    except NotAKey as error:
        raise NotGenuine("key", str(error)) from error
    height = int.from_bytes(public, "little") & ~_SIGN
    if height >= _PRIME or height in _WEAK:
        # The library accepts these, and one signature under them holds for many documents.
        raise NotGenuine("key", "The signer's key is one that anybody can sign with.")
    return Ed25519PublicKey.from_public_bytes(public)


def _signature(value: object) -> bytes:
    if not isinstance(value, str) or not value.startswith("z"):
        raise NotGenuine("signature", "The signature is missing.")
    try:
        signature = base58.decode(value[1:])
    except ValueError as error:
        raise NotGenuine("signature", "The signature is not base58.") from error
    if len(signature) != 64:
        raise NotGenuine("signature", "The signature has another length.")
    return signature


def _check(
    key: Ed25519PublicKey, signature: bytes, secured: Mapping[str, Json], options: Mapping[str, Json]
) -> None:
    from cryptography.exceptions import InvalidSignature

    try:
        key.verify(signature, hash_data(secured, options))
    except canonical.NotCanonical as error:
        raise NotGenuine("form", error.detail) from error
    except InvalidSignature as error:
        raise NotGenuine("altered", "The signature is not that of this document.") from error


def _digest(value: Mapping[str, Json]) -> bytes:
    written = canonical.write(dict(value))
    if len(written) > canonical.SIZE_CAP:
        raise canonical.NotCanonical("size", f"The document is larger than {canonical.SIZE_CAP} bytes.")
    return hashlib.sha256(written).digest()


def _form(value: Json) -> bytes:
    try:
        return canonical.write(value)
    except canonical.NotCanonical as error:
        raise NotGenuine("form", error.detail) from error


def _listed(value: object) -> list[Any]:
    return list(value) if isinstance(value, list) else [value]

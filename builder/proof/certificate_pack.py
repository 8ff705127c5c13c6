"""A certificate in few bytes, for its QR code: what all certificates share is left out, the rest stands in one order.

One byte: how many observations, 0 to 8. Then, as bytes: the signature (64), the issuer's public key (32), the
course's digest (32), the id (16), the fingerprints of the attempt and of each observation (10 each). Then, raw
deflated (RFC 1951) with ``dictionary-1.txt``: the lines of ``LINES``, joined by line feeds, in UTF-8.
The dictionary and the order are frozen: a code printed today means the same for ever. Changes take another prefix.
Twin of ``site_overrides/js/pure/certificate-pack.js``.
"""

from __future__ import annotations

import base64
import re
import uuid
import zlib
from functools import cache
from importlib.resources import files
from typing import Any

from journeybook.marking import canonical
from journeybook.marking.kind import Json
from journeybook.proof import base58
from journeybook.proof.certificate import SIZE_CAP, parsed
from journeybook.proof.certificate_shape import FORMAT, MOST_OBSERVATIONS
from journeybook.proof.data_integrity import CONTEXT
from journeybook.proof.did_key import did_of, method_of, public_of

LINES = (
    "trainer", "assessor", "identity", "name", "person", "employer", "workplace", "equipment", "title", "course",
    "profile", "language", "version", "example", "check", "practical", "attempt", "cut", "of", "mustPass", "marks",
    "checked", "observed", "trained", "validFrom", "retrainBy",
)  # fmt: skip
"""Members of the subject, and when it was issued; of ``mustPass`` the one number that both are."""
_COUNTS = ("attempt", "cut", "of", "mustPass", "marks")
_COUNT = re.compile(r"0|[1-9][0-9]{0,14}")
_FLAGS = {"true": True, "false": False}
_SIGNATURE, _KEY, _DIGEST, _ID, _FINGERPRINT = 64, 32, 32, 16, 10


@cache
def _dictionary() -> bytes:
    return (files("journeybook.proof") / "dictionary-1.txt").read_bytes()


def pack(record: bytes) -> bytes:
    """Return a certificate's bytes packed; raise ValueError for what is none, or none that was written here."""
    document = parsed(record)
    subject = document["credentialSubject"]
    observations = subject["observations"]
    proof_value = document["proof"].get("proofValue")
    if not isinstance(proof_value, str):
        raise ValueError("The certificate has no signature.")
    head = [
        bytes([len(observations)]),
        base58.decode(proof_value[1:]),
        public_of(document["issuer"]),
        bytes.fromhex(subject["digest"]),
        uuid.UUID(document["id"]).bytes,
        *(base64.b32decode(each.replace("-", "")) for each in (subject["fingerprint"], *observations)),
    ]
    machine = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS, 9, zlib.Z_DEFAULT_STRATEGY, _dictionary())
    lines = "\n".join(_line(name, document) for name in LINES).encode("utf-8")
    packed = b"".join(head) + machine.compress(lines) + machine.flush()
    if unpack(packed) != record:
        raise ValueError("The certificate holds more than its code can say.")
    return packed


def unpack(data: bytes) -> bytes:
    """Return the canonical bytes of what was packed; raise ValueError for what is damaged, or larger than SIZE_CAP."""
    observations = data[0] if data else MOST_OBSERVATIONS + 1
    sizes = (1, _SIGNATURE, _KEY, _DIGEST, _ID, *[_FINGERPRINT] * (1 + observations))
    if observations > MOST_OBSERVATIONS or len(data) <= sum(sizes):
        raise ValueError("It begins as no packed certificate does.")
    pieces: list[bytes] = []
    at = 0
    for size in sizes:
        pieces.append(data[at : at + size])
        at += size
    _, signature, key, digest, id_, *fingerprints = pieces
    lines = _inflated(data[at:]).decode("utf-8").split("\n")
    if len(lines) != len(LINES):
        raise ValueError("It has not the lines of a certificate.")
    said = {name: _value(name, line) for name, line in zip(LINES, lines, strict=True)}
    issuer = did_of(key)
    subject: dict[str, Json] = {name: value for name, value in said.items() if name != "validFrom"}
    first, *others = [_fingerprint(each) for each in fingerprints]
    subject |= {
        "format": FORMAT,
        "mustPass": [said["mustPass"], said["mustPass"]],
        "digest": digest.hex(),
        "fingerprint": first,
        "observations": [*others],
    }
    return canonical.write(
        {
            "@context": CONTEXT,
            "type": ["VerifiableCredential"],
            "id": f"urn:uuid:{uuid.UUID(bytes=id_)}",
            "issuer": issuer,
            "validFrom": said["validFrom"],
            "validUntil": f"{said['retrainBy']}T23:59:59Z",
            "credentialSubject": subject,
            "proof": {
                "@context": CONTEXT,
                "type": "DataIntegrityProof",
                "cryptosuite": "eddsa-jcs-2022",
                "verificationMethod": method_of(issuer),
                "proofPurpose": "assertionMethod",
                "proofValue": "z" + base58.encode(signature),
            },
        }
    )


def _line(name: str, document: dict[str, Any]) -> str:
    value: object = document[name] if name == "validFrom" else document["credentialSubject"][name]
    if isinstance(value, bool):
        return "true" if value else "false"
    return str(value[1]) if isinstance(value, list) else str(value)


def _value(name: str, line: str) -> Json:
    if name == "example":
        if line not in _FLAGS:
            raise ValueError("A flag is neither true nor false.")
        return _FLAGS[line]
    if name in _COUNTS:
        if _COUNT.fullmatch(line) is None:
            raise ValueError("A count is no number.")
        return int(line)
    return line


def _inflated(data: bytes) -> bytes:
    machine = zlib.decompressobj(-zlib.MAX_WBITS, _dictionary())
    try:
        lines = machine.decompress(data, SIZE_CAP + 1)
    except zlib.error as error:
        raise ValueError("Its lines are damaged.") from error
    if len(lines) > SIZE_CAP or not machine.eof or machine.unused_data:
        raise ValueError("Its lines are damaged or too many.")
    return lines


def _fingerprint(data: bytes) -> str:
    letters = base64.b32encode(data).decode("ascii")
    return "-".join(letters[start : start + 4] for start in range(0, len(letters), 4))

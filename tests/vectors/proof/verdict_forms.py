"""Verdict cases about the bytes of a certificate and about its proof."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from verdict_signers import FIRM, NOBODY, PLAIN, STRANGER, V2, changed, did, signed

from journeybook.marking import canonical
from journeybook.proof import base58
from journeybook.proof.data_integrity import hash_data, sign
from journeybook.proof.did_key import method_of

ORDER = 2**252 + 27742317777372353535851937790883648493
"""L, the order of the group (RFC 8032, 5.1)."""
BYTES = signed(PLAIN)
TEXT = BYTES.decode("utf-8")
PROOF: dict[str, Any] = json.loads(TEXT)["proof"]
SIGNATURE = base58.decode(PROOF["proofValue"][1:])


def with_proof(proof: object) -> bytes:
    return canonical.write({**PLAIN, "proof": proof})  # type: ignore[dict-item]


def with_value(value: str) -> bytes:
    return with_proof({**PROOF, "proofValue": value})


def by_options(options: dict[str, Any], **secured: Any) -> bytes:
    """Signed with just these options, over the certificate with the members that they secure otherwise."""
    signature = FIRM.sign(hash_data({**PLAIN, **secured}, options))
    return with_proof({**options, "proofValue": "z" + base58.encode(signature)})


def forms() -> Iterator[tuple[str, bytes, str]]:
    """Name, record, kind."""
    yield from _bytes()
    yield from _changes()
    yield from _proofs()
    yield from _signatures()


def _bytes() -> Iterator[tuple[str, bytes, str]]:
    bodies: list[tuple[str, bytes]] = [
        ("empty", b""), ("null", b"null"), ("a list", b"[]"), ("an object", b"{}"), ("a text", b'"x"'),
        ("a number", b"1"),
        ("words", b"Certificate"), ("a line feed after", BYTES + b"\n"), ("a blank before", b" " + BYTES),
        ("a byte order mark", b"\xef\xbb\xbf" + BYTES), ("UTF-16", TEXT.encode("utf-16")),
        ("cut short", BYTES[:-1]),
        ("twice", BYTES + BYTES), ("Latin-1", TEXT.encode("latin-1")),
        ("half a letter", BYTES.replace("è".encode(), b"\xc3")),
        ("an overlong letter", BYTES.replace(b'"1042"', b'"\xc1\x81"')),
        ("half a pair in UTF-8", BYTES.replace(b'"1042"', b'"\xed\xa0\x80"')),
        ("a zero byte", BYTES.replace(b'"1042"', b'"\0"')), ("brackets", b"[" * 16_000),
        ("braces", b'{"a":' * 3000),
        ("one byte too many", b'"' + b"x" * 16_383 + b'"'),
    ]  # fmt: skip
    for name, data in bodies:
        yield f"bytes: {name}", data, "unreadable"
    for name, old, new in (
        ("a blank inside", '"attempt":1', '"attempt": 1'),
        ("a letter written as its number", '"1042"', '"\\u0031042"'),
        ("half a pair", '"1042"', '"\\ud800"'),
        ("a slash behind a backslash", "https://www", "https:\\/\\/www"),
        ("a member twice", '"attempt":1', '"attempt":1,"attempt":1'),
        ("a member twice, differing", '"attempt":1', '"attempt":2,"attempt":1'),
        (
            "members in another order",
            '"attempt":1,"check":"self-recorded"',
            '"check":"self-recorded","attempt":1',
        ),
        ("1.0", '"attempt":1', '"attempt":1.0'),
        ("1e0", '"attempt":1', '"attempt":1e0'),
        ("1.5", '"attempt":1', '"attempt":1.5'),
        ("01", '"attempt":1', '"attempt":01'),
        ("-0", '"attempt":1', '"attempt":-0'),
        ("NaN", '"attempt":1', '"attempt":NaN'),
        ("Infinity", '"attempt":1', '"attempt":Infinity'),
        ("-Infinity", '"attempt":1', '"attempt":-Infinity'),
        ("1e999", '"attempt":1', '"attempt":1e999'),
        ("2^53", '"attempt":1', '"attempt":9007199254740992'),
        ("400 digits", '"attempt":1', '"attempt":' + "9" * 400),
        ("a comma too many", '"attempt":1,', '"attempt":1,,'),
        ("a comment", '"attempt":1,', '"attempt":1,/**/'),
        ("single quotes", '"1042"', "'1042'"),
        ("nested 40 deep", '"1042"', "[" * 40 + "]" * 40),
    ):
        assert TEXT.count(old) >= 1, old
        yield f"form: {name}", TEXT.replace(old, new, 1).encode("utf-8"), "unreadable"
    longest = changed(PLAIN, observations=["AAAA-BBBB-CCCC-DDDD"] * 1000)
    yield "larger than 16,384 bytes", signed(longest), "unreadable"


def _changes() -> Iterator[tuple[str, bytes, str]]:
    for name, old, new in (
        ("name", "Inès", "Inés"),
        ("person", '"1042"', '"1043"'),
        ("employer", "Quillon Basin Works", "Quillon Basin Work"),
        ("workplace", '"workplace":""', '"workplace":"Slip 2"'),
        ("marks", '"marks":19200', '"marks":24000'),
        ("of", '"of":24000', '"of":23000'),
        ("cut", '"cut":80', '"cut":79'),
        ("must-pass", "[8,8]", "[9,9]"),
        ("attempt", '"attempt":1', '"attempt":2'),
        ("day of the check", '"checked":"2026-03-01"', '"checked":"2026-03-02"'),
        ("day of issue", '"validFrom":"2026-03-02', '"validFrom":"2026-03-03'),
        ("fingerprint", "ABCD-EFGH", "ABCE-EFGH"),
        ("id", "0b0f3c3e", "0b0f3c3f"),
        ("digest", '"digest":"ab', '"digest":"aa'),
        ("example", '"example":false', '"example":true'),
        ("version", '"1.0"', '"1.1"'),
    ):
        assert TEXT.count(old) == 1, old
        yield f"changed: {name}", TEXT.replace(old, new).encode("utf-8"), "altered"
    held = TEXT.replace("2027-03-01", "2028-03-01")
    yield "changed: how long it holds", held.encode("utf-8"), "altered"
    other = TEXT.replace(did(FIRM)[8:], did(STRANGER)[8:])
    yield "changed: everybody's key", other.encode("utf-8"), "altered"


def _proofs() -> Iterator[tuple[str, bytes, str]]:
    options = {name: value for name, value in PROOF.items() if name != "proofValue"}
    shapes: list[tuple[str, object]] = [
        ("null", None), ("a text", "z"), ("one in a list", [PROOF]), ("two in a list", [PROOF, PROOF]),
        ("no one in a list", []), ("true", True),
    ]  # fmt: skip
    yield "proof missing", canonical.write(PLAIN), "unreadable"
    for name, proof in shapes:
        yield f"proof: {name}", with_proof(proof), "unreadable"
    yield "proof: empty", with_proof({}), "altered"
    for name in PROOF:
        rest = {each: value for each, value in PROOF.items() if each != name}
        yield f"proof: {name} taken away", with_proof(rest), "altered"
    stranger = sign(PLAIN, STRANGER)["proof"]
    yield "proof: somebody else's", with_proof(stranger), "altered"
    wrong: list[tuple[str, dict[str, Any]]] = [
        ("another purpose", {"proofPurpose": "authentication"}),
        ("another suite", {"cryptosuite": "eddsa-rdfc-2022"}),
        ("another kind", {"type": "Ed25519Signature2020"}), ("a member more", {"nonce": "x"}),
        ("a domain", {"domain": "example.org"}),
        ("a context of its own", {"@context": ["urn:x"]}), ("more context", {"@context": [*V2, "urn:x"]}),
        ("no fragment", {"verificationMethod": did(FIRM)}),
        ("two fragments", {"verificationMethod": method_of(did(FIRM)) + "#"}),
        ("another fragment", {"verificationMethod": f"{did(FIRM)}#{did(STRANGER)[8:]}"}),
        ("no method", {"verificationMethod": None}),
        ("a method that is a list", {"verificationMethod": [method_of(did(FIRM))]}),
    ]  # fmt: skip
    for name, change in wrong:
        yield f"proof, signed: {name}", by_options(options | change), "altered"
    # W3C Data Integrity EdDSA Cryptosuites 1.0, 3.3.2, step 4, and VC Data Integrity 1.0, 2.1: both are allowed.
    yield (
        "proof, signed: without a context",
        by_options({k: v for k, v in options.items() if k != "@context"}),
        "genuine",
    )
    short: dict[str, Any] = {"@context": V2[:1]}
    yield "proof, signed: the beginning of the context", by_options(options | short, **short), "genuine"
    yield "proof, signed: the beginning of the context over all of it", by_options(options | short), "altered"
    yield (
        "proof, signed: when it was made",
        by_options(options | {"created": "2026-03-02T08:00:00Z"}),
        "genuine",
    )
    yield (
        "proof: when it was made, added later",
        with_proof(PROOF | {"created": "2026-03-02T08:00:00Z"}),
        "altered",
    )


def _signatures() -> Iterator[tuple[str, bytes, str]]:
    s = int.from_bytes(SIGNATURE[32:], "little")
    malleable = SIGNATURE[:32] + (s + ORDER).to_bytes(32, "little")
    yield "signature: a second form of the same, s + L", with_value("z" + base58.encode(malleable)), "altered"
    turned = SIGNATURE[:32] + (ORDER - s).to_bytes(32, "little")
    yield "signature: turned around", with_value("z" + base58.encode(turned)), "altered"
    yield "signature: zeros", with_value("z" + base58.encode(bytes(64))), "altered"
    yield "signature: one byte short", with_value("z" + base58.encode(SIGNATURE[:-1])), "altered"
    yield "signature: one byte more", with_value("z" + base58.encode(SIGNATURE + b"\0")), "altered"
    yield "signature: another base", with_value("u" + PROOF["proofValue"][1:]), "altered"
    yield "signature: a sign that base58 has not", with_value(PROOF["proofValue"][:-1] + "0"), "altered"
    yield "signature: very long", with_value("z" + "1" * 10_000), "altered"
    yield "signature: empty", with_value(""), "altered"
    yield "signature: null", with_proof({**PROOF, "proofValue": None}), "altered"
    yield "signature: a list", with_proof({**PROOF, "proofValue": [PROOF["proofValue"]]}), "altered"
    nobodys = {**PLAIN, "issuer": NOBODY}
    neutral = "z" + base58.encode(b"\1" + bytes(63))
    proof = {**PROOF, "verificationMethod": method_of(NOBODY), "proofValue": neutral}
    yield (
        "key of small order, which signs everything",
        canonical.write({**nobodys, "proof": proof}),
        "altered",
    )

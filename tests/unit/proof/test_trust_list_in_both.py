"""The pages and the commands take the same trust lists, and refuse the others for the same reason."""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from journeybook.marking import canonical
from journeybook.proof import base58
from journeybook.proof.data_integrity import sign
from journeybook.proof.did_key import did_of, method_of
from journeybook.proof.trust_list import Refused, TrustedKey, TrustList, Withdrawal, read, write

ROOT = Path(__file__).parents[3]
OLD, NEW = (Ed25519PrivateKey.from_private_bytes(bytes([each]) * 32) for each in (1, 2))
OLD_DID, NEW_DID = (did_of(each.public_key().public_bytes_raw()) for each in (OLD, NEW))
LIST = TrustList(
    issuer=OLD_DID,
    holder="Quillon Basin Works",
    number=1,
    made="2026-03-01T08:00:00Z",
    keys=(
        TrustedKey(
            did=NEW_DID, holder="A. Trainer", role="trainer", from_day="2026-01-01", until="2026-12-31"
        ),
    ),
    withdrawn=(("urn:uuid:1", Withdrawal(on="2026-02-25", reason="issued in error")),),
)
SIGNED: dict[str, Any] = json.loads(write(LIST, OLD))
UNSIGNED = {name: value for name, value in SIGNED.items() if name != "proof"}
PROOF: dict[str, Any] = SIGNED["proof"]
TWO = write(LIST, OLD, NEW)
NOBODY = did_of(b"\1" + bytes(31))


def proof(**changes: Any) -> bytes:
    return canonical.write({**SIGNED, "proof": {**PROOF, **changes}})


def subject(**changes: Any) -> bytes:
    inner = {**UNSIGNED["credentialSubject"], **changes}
    return canonical.write(sign({**UNSIGNED, "credentialSubject": inner}, OLD))


def key(**changes: Any) -> bytes:
    return subject(keys=[{**UNSIGNED["credentialSubject"]["keys"][0], **changes}])


CASES: dict[str, bytes] = {
    "as written": canonical.write(SIGNED),
    "with space around": b"\n\t " + canonical.write(SIGNED) + "\u00a0\u2003\r\n".encode(),
    "with a sign that only Python strips": canonical.write(SIGNED) + b"\x1f",
    "with space inside": json.dumps(SIGNED).encode(),
    "empty": b"",
    "null": b"null",
    "a list": b"[]",
    "old and new key": TWO,
    "one signer twice": canonical.write({**SIGNED, "proof": [PROOF, PROOF]}),
    "five proofs": canonical.write({**SIGNED, "proof": [PROOF] * 5}),
    "no proofs": canonical.write({**SIGNED, "proof": []}),
    "no proof": canonical.write(UNSIGNED),
    "another signer": canonical.write(sign(UNSIGNED, NEW)),
    "changed": canonical.write({**SIGNED, "more": 1}),
    "context dropped": canonical.write({name: each for name, each in SIGNED.items() if name != "@context"}),
    "context appended": canonical.write({**SIGNED, "@context": [*SIGNED["@context"], "urn:x"]}),
    "another context": proof(**{"@context": ["urn:x"]}),
    "a member more": proof(nonce="x"),
    "another suite": proof(cryptosuite="eddsa-rdfc-2022"),
    "another purpose": proof(proofPurpose="authentication"),
    "another method": proof(verificationMethod=method_of(NEW_DID)),
    "a method without fragment": proof(verificationMethod=OLD_DID),
    "a method of two fragments": proof(verificationMethod=method_of(OLD_DID) + "#"),
    "a long signature": proof(proofValue="z" + "1" * 200),
    "no signature": proof(proofValue=""),
    "a key of nobody": canonical.write(
        {
            **SIGNED,
            "issuer": OLD_DID,
            "proof": [
                PROOF,
                {
                    **PROOF,
                    "verificationMethod": method_of(NOBODY),
                    "proofValue": "z" + base58.encode(b"\1" + bytes(63)),
                },
            ],
        }
    ),
    "another format": subject(format="journeybook trust list 2"),
    "a number as text": subject(number="1"),
    "a number that is true": subject(number=True),
    "a negative number": subject(number=-1),
    "no keys": subject(keys=None),
    "a key that is a text": subject(keys=["z6Mk"]),
    "a withdrawal without a day": subject(withdrawn=[{"id": "urn:uuid:1"}]),
    "a withdrawal without a reason": subject(withdrawn=[{"id": "urn:uuid:1", "on": "2026-02-25"}]),
    "a day of other digits": key(until="٢٠٢٦-12-31"),
    "a day that no month has": key(until="2026-99-99"),
    "a day and a line break": key(until="2026-12-31\n"),
    "a key withdrawn by no object": key(withdrawn=[]),
    "a key withdrawn for no reason": key(withdrawn={"on": "2026-02-25"}),
    "a key without a role": key(role=None),
    "demo as a number": key(demo=1),
}
SCRIPT = """
import { readFileSync } from 'node:fs';
const { scripts } = await import(process.argv[1]);
const { NobleEd25519, TrustList } = scripts;
const said = {};
for (const [name, text] of Object.entries(JSON.parse(readFileSync(0, 'utf8')))) {
  try {
    said[name] = (await TrustList.read(text, NobleEd25519.verify)).signers.join(' ');
  } catch (error) {
    said[name] = error.reason ?? String(error);
  }
}
console.log(JSON.stringify(said));
"""


def said(data: bytes) -> str:
    try:
        return " ".join(read(data).signers)
    except Refused as refused:
        return refused.reason


@pytest.fixture(scope="module")
def in_javascript() -> dict[str, str]:
    node = shutil.which("node")
    if node is None:
        pytest.skip("no node here")
    done = subprocess.run(
        [node, "--input-type=module", "-e", SCRIPT, str(ROOT / "tests" / "js" / "load-proof.mjs")],
        input=json.dumps({name: data.decode("utf-8") for name, data in CASES.items()}),
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
    )
    found: dict[str, str] = json.loads(done.stdout)
    return found


@pytest.mark.parametrize("name", CASES)
def test_both_say_the_same(name: str, in_javascript: dict[str, str]) -> None:
    assert said(CASES[name]) == in_javascript[name]


def test_the_cases_hold_lists_of_every_sort() -> None:
    assert {said(data) for data in CASES.values()} == {
        OLD_DID,
        f"{OLD_DID} {NEW_DID}",
        f"{OLD_DID} {OLD_DID}",
        "altered",
        "unreadable",
    }

"""Who signs in the verdict cases, what they sign, and the trust lists that know them.

Keys are published ones, so that anybody can make the file again: RFC 8032, 7.1, TEST 1 to 3; and the first two of
the test vectors of the did:key method (w3c-ccg/did-method-key, test-vectors/ed25519-x25519.json).
"""

from __future__ import annotations

import copy
from typing import Any

from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from journeybook.marking import canonical
from journeybook.proof.data_integrity import sign
from journeybook.proof.did_key import did_of

Document = dict[str, Any]
V2 = ["https://www.w3.org/ns/credentials/v2", "https://www.w3.org/ns/credentials/undefined-terms/v2"]
TODAY = "2026-11-27"


def _key(seed: str) -> Ed25519PrivateKey:
    return Ed25519PrivateKey.from_private_bytes(bytes.fromhex(seed))


FIRM = _key("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60")
SPRING = _key("4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb")
LOST = _key("c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7")
DEMO = _key("00" * 32)
STRANGER = _key("00" * 31 + "01")
NOBODY = did_of(b"\1" + bytes(31))
"""The neutral point of the curve: every message has a signature under it (RFC 8032, 5.1)."""


def did(key: Ed25519PrivateKey) -> str:
    return did_of(key.public_key().public_bytes_raw())


PLAIN: Document = {
    "@context": V2,
    "type": ["VerifiableCredential"],
    "id": "urn:uuid:0b0f3c3e-6f1f-4b7a-9a64-0a8f0f6f7a11",
    "issuer": did(FIRM),
    "validFrom": "2026-03-02T08:00:00Z",
    "validUntil": "2027-03-01T23:59:59Z",
    "credentialSubject": {
        "format": "journeybook certificate 1",
        "name": "Inès Okafor",
        "person": "1042",
        "employer": "Quillon Basin Works",
        "workplace": "",
        "equipment": "belt-worn powered respirator",
        "title": "Powered air for welders",
        "course": "powered-respirator",
        "version": "1.0",
        "digest": "ab" * 32,
        "profile": "uk",
        "language": "en",
        "marks": 19200,
        "of": 24000,
        "cut": 80,
        "mustPass": [8, 8],
        "check": "self-recorded",
        "practical": "not observed",
        "identity": "",
        "trainer": "",
        "assessor": "",
        "trained": "",
        "checked": "2026-03-01",
        "observed": "",
        "retrainBy": "2027-03-01",
        "attempt": 1,
        "fingerprint": "ABCD-EFGH-IJKL-MN27",
        "observations": [],
        "example": False,
    },
}
"""A check that nobody supervised, and no practical."""
WHOLE: Document = copy.deepcopy(PLAIN) | {"id": "urn:uuid:5d1f7c0a-93be-4e08-8c2d-61b7a9e0f412"}
WHOLE["credentialSubject"] |= {
    "workplace": "Slip 2",
    "check": "supervised",
    "practical": "observed",
    "identity": "works pass with photograph",
    "trainer": "Jo Vance",
    "assessor": "Sam Reyes",
    "trained": "2026-02-27",
    "observed": "2026-03-02",
    "observations": ["AAAA-BBBB-CCCC-DDDD", "EEEE-FFFF-GGGG-HHHH"],
}
"""Everything: supervised, observed twice."""


def changed(document: Document, by: Ed25519PrivateKey | None = None, **members: Any) -> Document:
    """A copy with other members of its subject, issued by another key where one is given."""
    copied = copy.deepcopy(document)
    copied["credentialSubject"].update(members)
    if by is not None:
        copied["issuer"] = did(by)
    return copied


def without(document: Document, *path: str) -> Document:
    """A copy without one member."""
    copied = copy.deepcopy(document)
    inner = copied
    for name in path[:-1]:
        inner = inner[name]
    del inner[path[-1]]
    return copied


def signed(document: Document, by: Ed25519PrivateKey = FIRM) -> bytes:
    """The canonical bytes of a document with its proof."""
    return canonical.write(sign(document, by))


def _listed(key: str, *, until: str = "2026-12-31", **more: Any) -> Document:
    return {
        "did": key,
        "holder": "Sam Reyes",
        "role": "assessor",
        "from": "2026-01-01",
        "until": until,
        "withdrawn": None,
        "demo": False,
        **more,
    }


WITHDRAWN = "urn:uuid:11111111-1111-4111-8111-111111111111"


def _trust(keys: list[Document]) -> str:
    withdrawn = [{"id": WITHDRAWN, "on": "2026-05-04", "reason": "issued to the wrong person"}]
    return signed(
        {
            "@context": V2,
            "type": ["VerifiableCredential"],
            "issuer": did(FIRM),
            "validFrom": "2026-11-01T08:00:00Z",
            "credentialSubject": {
                "format": "journeybook trust list 1",
                "holder": "Quillon Basin Works",
                "number": 3,
                "keys": keys,
                "withdrawn": withdrawn,
            },
        }
    ).decode("utf-8")


LISTS: dict[str, str] = {
    "yard": _trust(
        [
            _listed(did(FIRM)),
            _listed(did(SPRING), until="2026-03-02"),
            _listed(did(LOST), withdrawn={"on": "2026-06-01", "reason": "stolen"}),
            _listed(did(DEMO), demo=True),
            _listed(NOBODY),
        ]
    ),
    "twice": _trust(
        [
            _listed(did(FIRM), until="2026-02-28"),
            _listed(did(FIRM)),
            _listed(did(SPRING)),
            _listed(did(SPRING), until="2026-01-31", withdrawn={"on": "2026-02-01", "reason": "stolen"}),
            _listed(did(DEMO)),
            _listed(did(DEMO), until="2026-01-31", demo=True),
        ]
    ),
    "always": _trust([_listed(did(FIRM), until="9999-12-31") | {"from": "0001-01-01"}]),
    "empty": _trust([]),
}

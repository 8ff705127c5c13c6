"""Certificates of the yard for tests: a check alone, and one that was supervised and observed twice."""

from __future__ import annotations

import dataclasses
from datetime import date

from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from journeybook.proof.certificate import Certificate
from journeybook.proof.did_key import did_of

KEY, OTHER = (Ed25519PrivateKey.from_private_bytes(bytes([each]) * 32) for each in (1, 2))
PASSED = Certificate(
    id="urn:uuid:0b0f3c3e-6f1f-4b7a-9a64-0a8f0f6f7a11",
    issuer=did_of(KEY.public_key().public_bytes_raw()),
    valid_from="2026-03-02T08:00:00Z",
    valid_until="2027-03-01T23:59:59Z",
    name="Inès Okafor",
    person="1042",
    employer="Quillon Basin Works",
    workplace="",
    equipment="belt-worn powered respirator",
    title="Powered air for welders",
    course="powered-respirator",
    version="1.0",
    digest="ab" * 32,
    profile="gb",
    language="en",
    marks=16_000,
    of=20_000,
    cut=80,
    must_pass=(6, 6),
    check="self-recorded",
    practical="not observed",
    identity="",
    trainer="",
    assessor="",
    trained=None,
    checked=date(2026, 3, 1),
    observed=None,
    retrain_by=date(2027, 3, 1),
    attempt=1,
    fingerprint="ABCD-EFGH-IJKL-MN27",
    observations=(),
    example=False,
)
OBSERVED = dataclasses.replace(
    PASSED,
    workplace="Slip 2",
    check="supervised",
    practical="observed",
    identity="works pass with photograph",
    trainer="Jo Vance",
    assessor="Sam Reyes",
    trained=date(2026, 2, 27),
    observed=date(2026, 3, 2),
    observations=("AAAA-BBBB-CCCC-DDDD", "EEEE-FFFF-GGGG-HHHH"),
)

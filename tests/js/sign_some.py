"""Prints certificates and a trust list, signed as the commands sign them: one JSON array of texts.

The keys are the published ones of the did:key method's test vectors (seeds of zeros and a one), which anybody can sign
with; the names are invented.
"""

from __future__ import annotations

import json
import sys
from dataclasses import replace
from datetime import date

from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from journeybook.proof import certificate, trust_list
from journeybook.proof.did_key import did_of

FIRST, SECOND = (Ed25519PrivateKey.from_private_bytes(bytes(31) + bytes([last])) for last in (0, 1))
ISSUER = did_of(FIRST.public_key().public_bytes_raw())
PLAIN = certificate.Certificate(
    id="urn:uuid:0b0f3c3e-6f1f-4b7a-9a64-0a8f0f6f7a11",
    issuer=ISSUER,
    valid_from="2026-03-02T08:00:00Z",
    valid_until="2027-03-01T23:59:59Z",
    name="Ines Okafor",
    person="1042",
    employer="Quillon Basin Works",
    workplace="",
    equipment="pillar drill",
    title="The pillar drill",
    course="pillar-drill",
    version="1.0",
    digest="ab" * 32,
    profile="uk",
    language="en",
    marks=18_333,
    of=20_000,
    cut=80,
    must_pass=(5, 5),
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
    fingerprint="ABCD-EFGH-IJKL-MNOP",
    observations=(),
    example=False,
)
WATCHED = replace(
    PLAIN,
    name="Łucja Þorsteinsdóttir-Nguyễn 李娜 “Lu” <b>&",
    workplace="Slip 2",
    check="supervised",
    practical="observed",
    identity="company card",
    trainer="J. Vance",
    assessor="S. Reyes",
    trained=date(2026, 2, 27),
    observed=date(2026, 3, 1),
    observations=("QRST-UVWX-YZ23-4567", "2345-67AB-CDEF-GHIJ"),
    example=True,
)
LIST = trust_list.TrustList(
    issuer=ISSUER,
    holder="Quillon Basin Works",
    number=1,
    made="2026-03-05T00:00:00Z",
    keys=(
        trust_list.TrustedKey(
            did=ISSUER,
            holder="S. Reyes",
            role="assessor",
            from_day="2026-01-01",
            until="2027-01-31",
            demo=True,
        ),
    ),
    withdrawn=((PLAIN.id, trust_list.Withdrawal(on="2026-03-04", reason="name misspelt")),),
)

if __name__ == "__main__":
    texts = [certificate.write(each, FIRST).decode() for each in (PLAIN, WATCHED)]
    texts += [trust_list.write(LIST, FIRST).decode(), trust_list.write(LIST, FIRST, SECOND).decode()]
    json.dump(texts, sys.stdout)

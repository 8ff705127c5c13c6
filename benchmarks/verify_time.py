"""Times the verdict on 10,000 certificates against bare Ed25519 verification of the same signatures, in one process.

In turn (A B A B …) in batches of 500, both on one processor; processor time, median of all pairs. The yardstick is
given keys, signatures and the 64 bytes that were signed, ready made; ours is given the bytes of each certificate, of
20 signers, and a trust list with 1,000 withdrawals, and reads every member strictly, hashes, verifies, looks the
signer up and looks for a withdrawal. No two certificates are alike.
"""

from __future__ import annotations

import argparse
import json
import random
import statistics
import time
import uuid
from collections.abc import Callable
from datetime import date

from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

from journeybook.marking.fingerprint import fingerprint
from journeybook.proof import base58
from journeybook.proof.certificate import Certificate, write
from journeybook.proof.data_integrity import hash_data
from journeybook.proof.did_key import did_of
from journeybook.proof.trust_list import TrustedKey, TrustList, Withdrawal
from journeybook.proof.verdict import verdict

SIGNERS = 20
BATCH = 500
WITHDRAWN = 1000
TODAY = date(2026, 11, 27)
CHANCE = random.Random(20261127)


def certificate(number: int, issuer: str) -> Certificate:
    """One of a whole training: supervised, observed twice."""
    return Certificate(
        id=f"urn:uuid:{uuid.UUID(bytes=CHANCE.randbytes(16), version=4)}",
        issuer=issuer,
        valid_from="2026-03-02T08:00:00Z",
        valid_until="2027-03-01T23:59:59Z",
        name=f"Person Okafor-Ångström {number}",
        person=str(number),
        employer="Quillon Basin Works",
        workplace="Slip 2",
        equipment="belt-worn powered respirator",
        title="Powered respirator for welders: set it up, wear it, look after it",
        course="powered-respirator",
        version="1.0",
        digest=CHANCE.randbytes(32).hex(),
        profile="uk",
        language="en",
        marks=21_500,
        of=24_000,
        cut=80,
        must_pass=(8, 8),
        check="supervised",
        practical="observed",
        identity="works pass with photograph",
        trainer="Jo Vance",
        assessor="Sam Reyes",
        trained=date(2026, 2, 27),
        checked=date(2026, 3, 1),
        observed=date(2026, 3, 2),
        retrain_by=date(2027, 3, 1),
        attempt=1,
        fingerprint=fingerprint(b"%d" % number),
        observations=(fingerprint(b"a%d" % number), fingerprint(b"b%d" % number)),
        example=False,
    )


def trust_of(dids: list[str]) -> TrustList:
    """A list that names every signer, and a firm's withdrawals of some years."""
    keys = tuple(
        TrustedKey(
            did=did, holder=f"Assessor {number}", role="assessor", from_day="2026-01-01", until="2026-12-31"
        )
        for number, did in enumerate(dids)
    )
    gone = tuple(
        (
            f"urn:uuid:{uuid.UUID(bytes=CHANCE.randbytes(16), version=4)}",
            Withdrawal(on="2026-05-04", reason=""),
        )
        for _ in range(WITHDRAWN)
    )
    return TrustList(
        issuer=dids[0],
        holder="Quillon Basin Works",
        number=1,
        made="2026-11-01T08:00:00Z",
        keys=keys,
        withdrawn=gone,
    )


def signature_of(record: bytes) -> tuple[bytes, bytes]:
    """The signature, and the bytes that were signed."""
    document = json.loads(record)
    proof = document.pop("proof")
    return base58.decode(proof.pop("proofValue")[1:]), hash_data(document, proof)


def timed(work: Callable[[], object]) -> float:
    """Processor seconds of one run."""
    begun = time.process_time()
    work()
    return time.process_time() - begun


def main() -> None:
    """Measure in rounds."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--certificates", type=int, default=10_000)
    parser.add_argument("--rounds", type=int, default=3)
    arguments = parser.parse_args()
    private = [Ed25519PrivateKey.from_private_bytes(CHANCE.randbytes(32)) for _ in range(SIGNERS)]
    dids = [did_of(key.public_key().public_bytes_raw()) for key in private]
    records: list[bytes] = []
    bare: list[tuple[Ed25519PublicKey, bytes, bytes]] = []
    for number in range(arguments.certificates):
        signer = number % SIGNERS
        record = write(certificate(number, dids[signer]), private[signer])
        records.append(record)
        bare.append((private[signer].public_key(), *signature_of(record)))
    trust = trust_of(dids)

    def ours(first: int) -> None:
        for record in records[first : first + BATCH]:
            assert verdict(record, trust, TODAY).kind == "genuine"

    def yardstick(first: int) -> None:
        for key, signature, message in bare[first : first + BATCH]:
            key.verify(signature, message)

    pairs = [
        (timed(lambda first=first: ours(first)), timed(lambda first=first: yardstick(first)))  # type: ignore[misc]
        for _ in range(arguments.rounds)
        for first in range(0, len(records), BATCH)
    ]
    ratio = statistics.median(one / other for one, other in pairs)
    us = [1e6 * statistics.median(each) / BATCH for each in zip(*pairs, strict=True)]
    print(f"the verdict on {len(records)} certificates of {len(records[0]) / 1000:.1f} kB, one processor")
    print(f"ours {us[0]:.0f} µs each, bare Ed25519 {us[1]:.0f} µs each, ratio {ratio:.2f} (goal 2)")


if __name__ == "__main__":
    main()

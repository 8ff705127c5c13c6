"""How the files of format-1-certificate/ were made, once: ``python tests/kept/make_format_1_certificate.py``.

Signed with the published key of format-1-keys, which is a demo key. It never writes over a kept file.
"""

from __future__ import annotations

import sys
from dataclasses import replace
from datetime import date
from pathlib import Path

from journeybook.proof.certificate import Certificate, write
from journeybook.proof.certificate_code import to_code
from journeybook.proof.did_key import did_of
from journeybook.proof.key_file import open_key
from journeybook.proof.trust_list import TrustedKey, TrustList, Withdrawal
from journeybook.proof.trust_list import write as write_list

HERE = Path(__file__).parent
FOLDER = HERE / "format-1-certificate"


def main() -> None:
    """Write the folder, or refuse."""
    if FOLDER.exists():
        sys.exit("format-1-certificate is kept; nothing is written over it")
    private = open_key(HERE / "format-1-keys" / "key.pem", "abandon ability zoo able acid age")
    did = did_of(private.public_key().public_bytes_raw())
    observed = Certificate(
        id="urn:uuid:3f0e6c1e-6f0a-4c1c-9a3f-0c6e5b8f2a11",
        issuer=did,
        valid_from="2026-12-02T15:04:05Z",
        valid_until="2028-11-28T23:59:59Z",
        name="Zoë Ashdown",
        person="0417",
        employer="Quillon Basin Works",
        workplace="Bay 3",
        equipment="Pillar drill with telescopic guard",
        title="Set the guard on a pillar drill",
        course="pillar-drill",
        version="1.0",
        digest="ab" * 32,
        profile="uk",
        language="en",
        marks=4500,
        of=5000,
        cut=80,
        must_pass=(1, 1),
        check="supervised",
        practical="observed",
        identity="Works pass with photograph",
        trainer="A. Fenwright",
        assessor="T. Märrable (check); K. Vane (practical)",
        trained=date(2026, 11, 27),
        checked=date(2026, 12, 2),
        observed=date(2026, 11, 28),
        retrain_by=date(2028, 11, 28),
        attempt=2,
        fingerprint="ABCD-EFGH-IJKL-MNOP",
        observations=("QRST-UVWX-YZ23-4567",),
        example=True,
    )
    plain = replace(
        observed,
        id="urn:uuid:9c1d2b3a-0001-4000-8000-1234567890ab",
        valid_until="2028-12-02T23:59:59Z",
        name="李 小龍",
        workplace="",
        check="self-recorded",
        practical="not observed",
        identity="",
        trainer="",
        assessor="",
        trained=None,
        observed=None,
        retrain_by=date(2028, 12, 2),
        attempt=1,
        observations=(),
    )
    withdrawn = replace(plain, id="urn:uuid:9c1d2b3a-0002-4000-8000-1234567890ab")
    trust = TrustList(
        issuer=did,
        holder="Quillon Basin Works",
        number=2,
        made="2026-12-03T08:00:00Z",
        keys=(
            TrustedKey(
                did=did, holder="T. Märrable", role="training lead", from_day="2026-01-01", until="2027-01-31",
                demo=True,
            ),
        ),
        withdrawn=((withdrawn.id, Withdrawal(on="2026-12-03", reason="mistake")),),
    )  # fmt: skip
    FOLDER.mkdir()
    (FOLDER / "trust-list.json").write_bytes(write_list(trust, private))
    for name, certificate in (("observed", observed), ("self-recorded", plain), ("withdrawn", withdrawn)):
        record = write(certificate, private)
        (FOLDER / f"{name}.json").write_bytes(record)
        (FOLDER / f"{name}.code.txt").write_text(to_code(record) + "\n", encoding="ascii")


if __name__ == "__main__":
    main()

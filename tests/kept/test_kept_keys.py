"""Keys, their paper and trust lists that were written once open for ever.

The passphrase is public: the key is for this test alone.
"""

from __future__ import annotations

import hashlib
from pathlib import Path

from journeybook.proof.did_key import did_of
from journeybook.proof.key_file import open_key
from journeybook.proof.key_paper import der_of
from journeybook.proof.key_plate import read_plate
from journeybook.proof.trust_list import accept, read

KEYS = Path(__file__).parent / "format-1-keys"
# The digest of everything kept here: a changed, missing or added file is a mistake.
KEPT = "45513d2e866b56abe90e6e3b278530c47d541a18b10f42648bbc00da1b8febe5"


def test_no_kept_key_was_ever_touched() -> None:
    lines = [
        f"{path.name} {hashlib.sha256(path.read_bytes()).hexdigest()}\n" for path in sorted(KEYS.iterdir())
    ]
    assert hashlib.sha256("".join(lines).encode()).hexdigest() == KEPT


def test_the_kept_key_opens_with_its_words() -> None:
    private = open_key(KEYS / "key.pem", "abandon ability zoo able acid age")
    assert private.private_bytes_raw() == bytes([41]) * 32
    plate = read_plate((KEYS / "key.pem").read_text(encoding="utf-8"))
    assert plate.did == did_of(private.public_key().public_bytes_raw())
    assert (plate.holder, plate.role, plate.demo) == ("T. Märrable", "training lead", True)
    assert (plate.from_day.isoformat(), plate.until.isoformat()) == ("2026-01-01", "2027-01-31")


def test_the_kept_rows_are_the_kept_key() -> None:
    rows, file = (KEYS / name for name in ("key-rows.txt", "key.pem"))
    assert der_of(rows.read_text(encoding="utf-8")) == der_of(file.read_text(encoding="utf-8"))


def test_the_kept_lists_are_read_and_follow_one_another() -> None:
    first, handed, last = (read(path.read_bytes()) for path in sorted(KEYS.glob("trust-list-*.json")))
    accept(handed, first)
    accept(last, handed)
    assert [found.number for found in (first, handed, last)] == [1, 2, 3]
    assert len(handed.signers) == 2
    assert last.keys[0].withdrawn is not None
    assert last.withdrawn[0][1].reason == "mistake"

"""Certificates that were issued once are read, and judged the same, for ever.

Their key is published, and made for trying out.
"""

from __future__ import annotations

import hashlib
from datetime import date
from pathlib import Path

import pytest

from journeybook.proof.certificate import read
from journeybook.proof.certificate_code import from_code, to_code
from journeybook.proof.trust_list import read as read_list
from journeybook.proof.verdict import verdict

FOLDER = Path(__file__).parent / "format-1-certificate"
# The digest of everything kept here: a changed, missing or added file is a mistake.
KEPT = "004721f3b361737ffedf68d79bc56e45ef74d5e9a176debbe3cfba0d1f1aa5a7"
TRUST = read_list((FOLDER / "trust-list.json").read_bytes())
NAMES = ("observed", "self-recorded", "withdrawn")


def record(name: str) -> bytes:
    return (FOLDER / f"{name}.json").read_bytes()


def test_no_kept_certificate_was_ever_touched() -> None:
    lines = [
        f"{path.name} {hashlib.sha256(path.read_bytes()).hexdigest()}\n" for path in sorted(FOLDER.iterdir())
    ]
    assert hashlib.sha256("".join(lines).encode()).hexdigest() == KEPT


@pytest.mark.parametrize("name", NAMES)
def test_a_kept_code_is_its_record(name: str) -> None:
    code = (FOLDER / f"{name}.code.txt").read_text(encoding="ascii")
    assert from_code(code) == record(name)
    # What is packed today need not be the same signs, as long as they hold the same.
    assert from_code(to_code(record(name))) == record(name)


def test_a_kept_certificate_says_what_it_said() -> None:
    said = read(record("observed"))
    assert (said.name, said.person, said.employer) == ("Zoë Ashdown", "0417", "Quillon Basin Works")
    assert (said.marks, said.of, said.cut, said.must_pass, said.attempt) == (4500, 5000, 80, (1, 1), 2)
    assert (said.check, said.practical) == ("supervised", "observed")
    assert said.assessor == "T. Märrable (check); K. Vane (practical)"
    assert (said.trained, said.observed) == (date(2026, 11, 27), date(2026, 11, 28))
    assert (said.checked, said.retrain_by) == (date(2026, 12, 2), date(2028, 11, 28))
    assert said.observations == ("QRST-UVWX-YZ23-4567",)
    plain = read(record("self-recorded"))
    assert (plain.name, plain.check, plain.practical) == ("李 小龍", "self-recorded", "not observed")
    assert (plain.trained, plain.observed, plain.observations) == (None, None, ())


@pytest.mark.parametrize(
    ("name", "day", "kind"),
    [
        ("observed", date(2026, 12, 2), "example"),
        ("observed", date(2028, 11, 28), "example"),
        ("observed", date(2028, 11, 29), "out-of-date"),
        ("observed", date(2026, 12, 1), "example"),
        ("observed", date(2026, 11, 30), "out-of-date"),
        ("self-recorded", date(2028, 12, 2), "example"),
        ("withdrawn", date(2026, 12, 2), "withdrawn"),
    ],
)
def test_a_kept_certificate_is_judged_as_it_was(name: str, day: date, kind: str) -> None:
    assert verdict(record(name), TRUST, day).kind == kind


def test_a_kept_certificate_with_another_name_is_altered() -> None:
    other = record("observed").replace("Zoë".encode(), "Zoé".encode())
    assert verdict(other, TRUST, date(2026, 12, 2)).kind == "altered"


def test_without_the_list_its_signer_is_unknown() -> None:
    assert verdict(record("observed"), None, date(2026, 12, 2)).kind == "unknown-signer"

"""The quick way to read a certificate and the long way say the same, and no changed byte is ever genuine."""

from __future__ import annotations

import json
import random
from collections import Counter
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from hypothesis import given, settings
from hypothesis import strategies as st

from journeybook.marking import canonical
from journeybook.proof import verdict as module
from journeybook.proof.certificate import NotACertificate, of_document, parsed
from journeybook.proof.data_integrity import hash_data, sign
from journeybook.proof.quick_certificate import quick
from journeybook.proof.trust_list import TrustList, read
from journeybook.proof.verdict import Verdict, verdict

ROOT = Path(__file__).parents[3]
TABLE: dict[str, Any] = json.loads((ROOT / "tests/vectors/proof/verdicts.json").read_text(encoding="utf-8"))
YARD: TrustList = read(TABLE["lists"]["yard"].encode("utf-8"))
PLAIN, WHOLE = (
    str(TABLE["records"][each]).encode("utf-8") for each in ("check alone", "supervised and observed")
)
TODAY = date(2026, 11, 27)
KEY = Ed25519PrivateKey.from_private_bytes(
    bytes.fromhex("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60")
)
"""RFC 8032, 7.1, TEST 1: the issuer of both records."""


def slow(record: bytes) -> Verdict:
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(module, "quick", lambda _record: None)
        return verdict(record, YARD, TODAY)


def records() -> Iterator[bytes]:
    """Of the verdict cases, as far as they are texts."""
    for case in TABLE["cases"]:
        if "record" in case:
            yield str(case["record"]).encode("utf-8")
        elif "edits" in case:
            text: str = TABLE["records"][case["of"]]
            for old, new in case["edits"]:
                text = text.replace(old, new)
            yield text.encode("utf-8")


def test_both_ways_say_the_same_of_every_case() -> None:
    fits = Counter[bool]()
    for record in records():
        assert verdict(record, YARD, TODAY) == slow(record)
        fits[quick(record) is not None] += 1
    assert fits[True] >= 70
    assert fits[False] >= 300


@pytest.mark.parametrize("record", [PLAIN, WHOLE])
def test_the_message_is_what_is_signed(record: bytes) -> None:
    found = quick(record)
    document = json.loads(record)
    proof = document.pop("proof")
    del proof["proofValue"]
    assert found is not None
    assert found.message == hash_data(document, proof)
    assert found.certificate == of_document(parsed(record))


TEXTS = st.one_of(
    st.sampled_from(["", " ", "Ines", "Inès", 'In"es', "In\\es", "e\u0301", "\u0301"]),
    st.sampled_from(["\U00010400", "\u2028", "a\u00a0", "\x7f", "\u212b"]),
    st.text(max_size=8),
    st.integers(195, 203).map(lambda size: "x" * size),
)  # fmt: skip
MEMBERS: dict[str, st.SearchStrategy[Any]] = {
    **dict.fromkeys(("name", "person", "employer", "workplace", "title", "identity", "trainer", "assessor"), TEXTS),
    **dict.fromkeys(
        ("trained", "checked", "observed", "retrainBy"),
        st.sampled_from(["", "2026-02-28", "2026-02-29", "2024-02-29", "2026-13-01", "2027-03-01", "0000-01-01"]),
    ),
    **dict.fromkeys(
        ("marks", "of"),
        st.sampled_from([0, 1, 999, 1000, 19199, 19200, 24000, 24001, 10**15, 10**15 + 1000]),
    ),
    "cut": st.sampled_from([0, 1, 10, 79, 80, 81, 99, 100, 101, True]),
    "mustPass": st.lists(st.sampled_from([0, 7, 8, 10**16]), max_size=3),
    "check": st.sampled_from(["self-recorded", "supervised", ""]),
    "practical": st.sampled_from(["observed", "not observed", ""]),
    "attempt": st.sampled_from([0, 1, 10**15, 2**53 - 1, -1]),
    "observations": st.lists(st.sampled_from(["AAAA-BBBB-CCCC-DDDD", "AAAA-BBBB-CCCC-DDD1"]), max_size=9),
    "example": st.sampled_from([True, False, 0, None]),
}  # fmt: skip


@settings(max_examples=200, deadline=None)
@given(st.sampled_from([PLAIN, WHOLE]), st.fixed_dictionaries({}, optional=MEMBERS))
def test_both_ways_say_the_same_of_any_members(record: bytes, members: dict[str, Any]) -> None:
    document = json.loads(record)
    del document["proof"]
    document["credentialSubject"] |= members
    document["validUntil"] = f"{document['credentialSubject']['retrainBy']}T23:59:59Z"
    try:
        changed = canonical.write(sign(document, KEY))
    except canonical.NotCanonical:
        return
    found, wanted = verdict(changed, YARD, TODAY), slow(changed)
    assert found == wanted
    fits = quick(changed)
    try:
        members_of = parsed(changed)
    except NotACertificate:
        assert fits is None
        return
    if fits is not None:
        proof = members_of.pop("proof")
        del proof["proofValue"]
        assert fits.message == hash_data(members_of, proof)
    else:
        # Only what is written with a backslash, or counts very far, goes the long way.
        assert b"\\" in changed or b"00000000000" in changed or b"9007199254740991" in changed


def changed_bytes(values: int) -> Iterator[bytes]:
    """The check alone with one byte another: so many other values of every byte."""
    made = random.Random(values)
    for at, byte in enumerate(PLAIN):
        others = [each for each in range(256) if each != byte]
        for value in others if values == 255 else made.sample(others, values):
            yield PLAIN[:at] + bytes([value]) + PLAIN[at + 1 :]


def test_no_changed_byte_is_genuine() -> None:
    assert verdict(PLAIN, YARD, TODAY).kind == "genuine"
    for record in changed_bytes(4):
        found = verdict(record, YARD, TODAY)
        assert found.kind in {"altered", "unreadable"}
        assert found == slow(record)


@pytest.mark.long
def test_no_byte_changed_into_any_other_is_genuine() -> None:
    kinds = Counter(verdict(record, YARD, TODAY).kind for record in changed_bytes(255))
    assert set(kinds) == {"altered", "unreadable"}
    assert kinds.total() == 255 * len(PLAIN)


@pytest.mark.parametrize("at", range(0, len(WHOLE), 97))
def test_bytes_lost_doubled_or_added_are_never_genuine(at: int) -> None:
    for record in (
        WHOLE[:at],
        WHOLE[at:],
        WHOLE[:at] + WHOLE[at + 1 :],
        WHOLE[:at] + WHOLE[at : at + 1] + WHOLE[at:],
    ):
        if record != WHOLE:
            assert verdict(record, YARD, TODAY).kind in {"altered", "unreadable"}
            assert verdict(record, YARD, TODAY) == slow(record)

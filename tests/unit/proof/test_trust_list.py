"""A trust list is read only as it was signed, and replaced only by a newer one that a key of it vouches for."""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Callable
from typing import Any

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from journeybook.marking import canonical
from journeybook.proof.data_integrity import sign
from journeybook.proof.did_key import did_of
from journeybook.proof.trust_list import Refused, TrustedKey, TrustList, Withdrawal, accept, read, write

OLD, NEW = (Ed25519PrivateKey.from_private_bytes(bytes([each]) * 32) for each in (1, 2))
OLD_DID, NEW_DID = (did_of(each.public_key().public_bytes_raw()) for each in (OLD, NEW))
LOST = "urn:uuid:00000000-0000-4000-8000-000000000001"
FIRST = TrustList(
    issuer=OLD_DID,
    holder="Quillon Basin Works",
    number=1,
    made="2026-03-01T08:00:00Z",
    keys=(
        TrustedKey(
            did=OLD_DID,
            holder="A. Trainer",
            role="trainer",
            from_day="2026-01-01",
            until="2026-12-31",
            demo=True,
        ),
        TrustedKey(
            did=NEW_DID,
            holder="B. Trainer",
            role="trainer",
            from_day="2026-02-01",
            until="2027-01-31",
            withdrawn=Withdrawal(on="2026-02-20", reason="key lost"),
        ),
    ),
    withdrawn=((LOST, Withdrawal(on="2026-02-25", reason="issued in error")),),
)
SECOND = dataclasses.replace(FIRST, number=2, issuer=NEW_DID)


def changed(change: Callable[[Any], None]) -> bytes:
    """The first list with a change in what it says, signed as it then is."""
    document = json.loads(write(FIRST, OLD))
    del document["proof"]
    change(document)
    return canonical.write(sign(document, OLD))


def reason_of(data: bytes) -> str:
    with pytest.raises(Refused) as refused:
        read(data)
    return refused.value.reason


def test_a_list_comes_back_as_it_was_written_with_its_signer() -> None:
    assert read(write(FIRST, OLD)) == dataclasses.replace(FIRST, signers=(OLD_DID,))


def test_a_line_break_at_the_end_of_the_file_does_no_harm() -> None:
    assert read(b"\xef\xbb\xbf" + write(FIRST, OLD) + b"\r\n") == read(write(FIRST, OLD))


def test_a_list_is_signed_by_its_issuer() -> None:
    with pytest.raises(ValueError, match="by its issuer"):
        write(FIRST, NEW)


def test_a_key_counts_on_its_first_and_last_day_and_not_beyond() -> None:
    days = ["2025-12-31", "2026-01-01", "2026-12-31", "2027-01-01"]
    assert [FIRST.key_of(OLD_DID, day) is not None for day in days] == [False, True, True, False]


def test_a_withdrawn_certificate_is_found_and_another_is_not() -> None:
    assert FIRST.withdrawal_of(LOST) == Withdrawal(on="2026-02-25", reason="issued in error")
    assert FIRST.withdrawal_of(LOST.replace("1", "2")) is None


@pytest.mark.parametrize("data", [b"", b"[]", b"{}", b"null", b"7", b"\xff", b'{ "issuer":""}'])
def test_what_is_no_list_is_unreadable(data: bytes) -> None:
    assert reason_of(data) == "unreadable"


@pytest.mark.parametrize(
    "change",
    [
        lambda list_: list_.update(issuer="did:web:example.com"),
        lambda list_: list_.update(validFrom="2026-03-01"),
        lambda list_: list_["credentialSubject"].update(format="journeybook trust list 2"),
        lambda list_: list_["credentialSubject"].update(number="2"),
        lambda list_: list_["credentialSubject"].update(number=True),
        lambda list_: list_["credentialSubject"].pop("holder"),
        lambda list_: list_["credentialSubject"].update(keys={}),
        lambda list_: list_["credentialSubject"].update(withdrawn=[LOST]),
        lambda list_: list_["credentialSubject"]["withdrawn"][0].update(on="25.02.2026"),
        lambda list_: list_["credentialSubject"]["keys"][0].update(did="z6Mk"),
        lambda list_: list_["credentialSubject"]["keys"][0].update(until=None),
        lambda list_: list_["credentialSubject"]["keys"][0].update(demo=0),
        lambda list_: list_["credentialSubject"]["keys"][0].pop("withdrawn"),
        lambda list_: list_["credentialSubject"]["keys"][0].update(withdrawn={}),
    ],
)
def test_a_list_of_another_shape_is_unreadable_though_it_is_signed(change: Callable[[Any], None]) -> None:
    assert reason_of(changed(change)) == "unreadable"


def test_a_role_or_a_reason_that_is_no_text_decides_nothing() -> None:
    def without(document: Any) -> None:
        del document["credentialSubject"]["keys"][0]["role"]
        document["credentialSubject"]["withdrawn"][0]["reason"] = 7

    found = read(changed(without))
    assert (found.keys[0].role, found.withdrawn[0][1].reason) == ("", "")


def test_a_list_changed_after_signing_is_altered() -> None:
    assert reason_of(write(FIRST, OLD).replace(b"key lost", b"key sold")) == "altered"


def test_a_list_that_only_somebody_else_signed_is_altered() -> None:
    document = json.loads(write(FIRST, OLD))
    del document["proof"]
    assert reason_of(canonical.write(sign(document, NEW))) == "altered"


def test_a_newer_list_of_the_same_key_replaces_the_list_in_use() -> None:
    accept(read(write(dataclasses.replace(FIRST, number=2), OLD)), FIRST)


def test_a_new_key_takes_over_where_the_old_one_signs_too() -> None:
    accept(read(write(SECOND, NEW, OLD)), FIRST)


def refusal(newer: TrustList, current: TrustList | None) -> str:
    with pytest.raises(Refused) as refused:
        accept(newer, current)
    return refused.value.reason


SPARE = Ed25519PrivateKey.from_private_bytes(bytes([3]) * 32)
SPARE_KEY = TrustedKey(
    did=did_of(SPARE.public_key().public_bytes_raw()),
    holder="C. Trainer",
    role="works manager",
    from_day="2026-01-01",
    until="2026-12-31",
)
WITH_SPARE = dataclasses.replace(FIRST, keys=(*FIRST.keys, SPARE_KEY))


def by_spare(made: str = "2026-03-02T08:00:00Z") -> TrustList:
    """A newer list that the spare key alone answers for."""
    return read(write(dataclasses.replace(FIRST, number=2, issuer=SPARE_KEY.did, made=made), SPARE))


def test_a_second_key_of_the_list_vouches_where_the_first_is_lost() -> None:
    accept(by_spare(), WITH_SPARE)


def test_a_key_vouches_only_on_its_days_and_the_issuers_beyond_them() -> None:
    assert refusal(by_spare("2027-01-01T00:00:00Z"), WITH_SPARE) == "stranger"
    accept(read(write(dataclasses.replace(FIRST, number=2, made="2027-06-01T08:00:00Z"), OLD)), FIRST)


def test_a_demo_key_beside_the_issuers_and_a_withdrawn_key_vouch_for_nothing() -> None:
    demo = dataclasses.replace(SPARE_KEY, demo=True)
    assert refusal(by_spare(), dataclasses.replace(FIRST, keys=(*FIRST.keys, demo))) == "stranger"
    gone = dataclasses.replace(SPARE_KEY, withdrawn=Withdrawal(on="2026-03-01", reason="lost"))
    assert refusal(by_spare(), dataclasses.replace(FIRST, keys=(*FIRST.keys, gone))) == "stranger"


def test_an_issuer_whose_own_key_is_withdrawn_vouches_for_nothing() -> None:
    stolen = dataclasses.replace(FIRST.keys[0], withdrawn=Withdrawal(on="2026-03-01", reason="stolen"))
    current = dataclasses.replace(FIRST, keys=(stolen, *FIRST.keys[1:]))
    assert refusal(read(write(dataclasses.replace(FIRST, number=2), OLD)), current) == "stranger"


def test_a_new_key_alone_is_a_stranger() -> None:
    assert refusal(read(write(SECOND, NEW)), FIRST) == "stranger"


@pytest.mark.parametrize("number", [0, 1])
def test_a_list_that_is_not_newer_is_refused(number: int) -> None:
    assert refusal(read(write(dataclasses.replace(FIRST, number=number), OLD)), FIRST) == "older"


def test_a_list_dated_before_the_one_in_use_is_refused_so_that_no_key_that_ran_out_can_date_itself_back() -> (
    None
):
    in_use = dataclasses.replace(WITH_SPARE, made="2027-01-15T08:00:00Z")
    assert refusal(by_spare("2026-12-31T08:00:00Z"), in_use) == "older"
    accept(read(write(dataclasses.replace(FIRST, number=2, made="2027-01-15T07:00:00Z"), OLD)), in_use)


def test_nothing_vouches_for_the_first_list_somebody_brings() -> None:
    assert refusal(read(write(FIRST, OLD)), None) == "none-before"

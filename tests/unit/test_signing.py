"""Whether a key signs certificates of a course today: each reason against it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from journeybook.proof.key_plate import KeyPlate
from journeybook.proof.trust_list import TrustedKey, TrustList, Withdrawal
from journeybook.signing import example_values, is_demo, no_signing

DID = "did:key:z6Mk" + "a" * 44
PLATE = KeyPlate(
    did=DID, holder="T. Marrable", role="training lead", from_day=date(2026, 1, 10), until=date(2027, 1, 31)
)
KEY = TrustedKey(
    did=DID, holder="T. Marrable", role="training lead", from_day="2026-01-10", until="2027-01-31"
)
TODAY = date(2026, 12, 2)
OWN: dict[str, Any] = {"public": {"kit": {"values": []}, "profile": {"values": []}}}
GONE = Withdrawal(on="2026-11-30", reason="stolen")


def listed(*keys: TrustedKey) -> TrustList:
    return TrustList(
        issuer=DID, holder="Quillon Basin Works", number=1, made="2026-01-10T08:00:00Z", keys=keys
    )


def why(
    plate: KeyPlate, trust: TrustList | None, content: dict[str, Any] = OWN, today: date = TODAY
) -> list[str]:
    return [each.why for each in no_signing(plate, trust, "trust.json", content, today)]


def values(**example: bool) -> list[dict[str, Any]]:
    return [{"id": id_, "example": flag} for id_, flag in example.items()]


@pytest.mark.parametrize("trust", [None, listed(KEY)])
def test_a_key_in_its_days_signs(trust: TrustList | None) -> None:
    assert why(PLATE, trust) == []


@pytest.mark.parametrize(("today", "signs"), [
    (date(2026, 1, 9), False), (date(2026, 1, 10), True), (date(2027, 1, 31), True), (date(2027, 2, 1), False),
])  # fmt: skip
def test_both_days_are_included(today: date, signs: bool) -> None:
    assert (why(PLATE, None, today=today) == []) is signs
    assert (why(PLATE, listed(KEY), today=today) == []) is signs


def test_before_its_days_it_is_told_to_wait_and_after_them_to_make_another() -> None:
    (early,) = no_signing(PLATE, None, "", OWN, date(2026, 1, 9))
    assert early.why == (
        "The key of T. Marrable signs from 2026-01-10 until 2027-01-31, and today is 2026-01-09 (UTC)."
    )
    assert early.mend == "Sign on 2026-01-10 or later, or with another key."
    (late,) = no_signing(PLATE, None, "", OWN, date(2027, 2, 1))
    assert late.mend.startswith("Make this year's key")
    assert "trust renew" in late.mend


def test_the_list_may_allow_fewer_days_than_the_plate() -> None:
    short = replace(KEY, until="2026-11-30")
    assert why(PLATE, listed(short)) == [
        "The key of T. Marrable on the trust list signs from 2026-01-10 until 2026-11-30, "
        "and today is 2026-12-02 (UTC)."
    ]


def test_and_never_more() -> None:
    long = replace(KEY, until="2029-01-31")
    assert len(why(PLATE, listed(long), today=date(2027, 2, 1))) == 1


def test_a_key_that_stands_in_the_list_twice_signs_in_the_days_of_either() -> None:
    first, second = replace(KEY, until="2026-06-30"), replace(KEY, from_day="2026-10-01")
    assert why(PLATE, listed(first, second)) == []
    (told,) = why(PLATE, listed(first, second), today=date(2026, 8, 1))
    assert "signs from 2026-01-10 until 2026-06-30 and from 2026-10-01 until 2027-01-31" in told


def test_what_is_said_against_a_key_holds_for_each_of_its_lines() -> None:
    assert why(PLATE, listed(KEY, replace(KEY, withdrawn=GONE))) == [
        "The key of T. Marrable was withdrawn on 2026-11-30."
    ]
    assert is_demo(PLATE, listed(KEY, replace(KEY, demo=True)))


def test_a_stranger_is_told_how_to_get_on_the_list() -> None:
    (told,) = no_signing(PLATE, listed(replace(KEY, did=DID + "b")), "trust.json", OWN, TODAY)
    assert (
        told.why
        == "The key of T. Marrable is not on the trust list trust.json, so nobody could believe what it signs."
    )
    assert "journeybook trust add trust.json plate.txt --key FILE" in told.mend


def test_example_values_of_either_sheet_need_a_demo_key() -> None:
    content = {
        "public": {
            "kit": {"values": values(a=True, b=False, c=True)},
            "profile": {"values": values(d=True, e=True)},
        }
    }
    assert example_values(content) == ["a", "c", "d", "e"]
    (told,) = why(PLATE, listed(KEY), content)
    assert told.endswith("are not valid for work: a, c, d and 1 more.")
    assert why(replace(PLATE, demo=True), listed(KEY), content) == []
    assert why(PLATE, listed(replace(KEY, demo=True)), content) == []


def test_every_reason_is_told_at_once() -> None:
    content = {"public": {"kit": {"values": values(a=True)}, "profile": {"values": []}}}
    found = why(PLATE, listed(replace(KEY, withdrawn=GONE)), content, date(2028, 1, 1))
    assert len(found) == 4

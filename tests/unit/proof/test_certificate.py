"""A certificate says what it is made of, comes back from its bytes, and is none where any member is out of shape."""

from __future__ import annotations

import dataclasses
import json
from datetime import date
from typing import Any

import pytest
from yard_certificates import KEY, OBSERVED, OTHER, PASSED

from journeybook.marking import canonical
from journeybook.proof.certificate import Certificate, NotACertificate, document_of, read, write
from journeybook.proof.data_integrity import verify


def altered(change: dict[str, Any], **members: Any) -> bytes:
    """The bytes of PASSED with other members of its subject, and of its own."""
    document = json.loads(write(PASSED, KEY))
    document["credentialSubject"].update(change)
    document.update(members)
    return canonical.write(document)


def refusal(data: bytes) -> str:
    with pytest.raises(NotACertificate) as refused:
        read(data)
    return refused.value.detail


@pytest.mark.parametrize("certificate", [PASSED, OBSERVED, dataclasses.replace(PASSED, example=True)])
def test_what_was_written_is_read_and_its_issuer_signed_it(certificate: Certificate) -> None:
    data = write(certificate, KEY)
    assert read(data) == certificate
    assert verify(json.loads(data)) == certificate.issuer


def test_the_unsigned_document_is_that_of_the_signed_one() -> None:
    signed = json.loads(write(OBSERVED, KEY))
    del signed["proof"]
    assert document_of(OBSERVED) == signed


def test_nobody_signs_for_another() -> None:
    with pytest.raises(ValueError, match=r"^A certificate is signed by its issuer\.$"):
        write(PASSED, OTHER)


@pytest.mark.parametrize(
    ("change", "detail"),
    [
        ({"name": "Ines\u0301"}, "Its “name” is not of the shape that a certificate asks for."),
        ({"name": "I" * 201}, "Its “name” is not of the shape that a certificate asks for."),
        ({"employer": ""}, "Its “employer” is not of the shape that a certificate asks for."),
        ({"marks": 15_999}, "Its marks do not reach the cut."),
        ({"marks": 20_001}, "It has more marks than there are."),
        ({"must_pass": (5, 6)}, "A must-pass question was missed."),
        (
            {"identity": "pass"},
            "How identity was checked belongs to a supervised check, and to no other.",
        ),
        (
            {"assessor": "Sam Reyes"},
            "An assessor belongs to what was supervised or observed, and to nothing else.",
        ),
        (
            {"observed": date(2026, 3, 1)},
            "The day and the records of observation belong to an observed practical, and to no other.",
        ),
        (
            {"retrain_by": date(2027, 3, 2)},
            "It does not end with the day on which training is due again.",
        ),
    ],
)
def test_what_is_out_of_shape_is_not_signed(change: dict[str, Any], detail: str) -> None:
    with pytest.raises(NotACertificate) as refused:
        write(dataclasses.replace(PASSED, **change), KEY)
    assert refused.value.detail == detail


def test_half_a_letter_is_not_signed() -> None:
    with pytest.raises(NotACertificate):
        write(dataclasses.replace(PASSED, name="Ines\ud800"), KEY)


def test_a_record_of_ours_of_another_kind_is_none() -> None:
    assert refusal(altered({}, type=["VerifiableCredential", "Other"])) == "It is a record of another kind."


def test_a_member_more_is_one_too_many() -> None:
    assert refusal(altered({"note": ""})) == "Its subject has not the members of a certificate."
    assert refusal(altered({}, note="")) == "It has not the members of a certificate."


def test_true_is_not_one() -> None:
    assert (
        refusal(altered({"attempt": True}))
        == "Its “attempt” is not of the shape that a certificate asks for."
    )


def test_bytes_that_are_not_canonical_are_none() -> None:
    detail = "The bytes differ from the canonical form of their contents."
    assert refusal(write(PASSED, KEY) + b"\n") == detail


def test_more_than_sixteen_kilobytes_are_not_looked_at() -> None:
    assert refusal(b"[" * 16_385) == "It is larger than 16384 bytes."

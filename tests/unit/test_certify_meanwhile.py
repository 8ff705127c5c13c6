"""Certificates and what happens beside: somebody vouches while the command runs, or had tried things out before."""

from __future__ import annotations

import fcntl
import json
import os
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from certified_class import DAY, WORDS, Shop
from click.testing import Result

from journeybook.certificate_words import sheet_of
from journeybook.certifying import certify_sitting
from journeybook.certifying_desk import NOT_ISSUED, Desk
from journeybook.marking.fingerprint import fingerprint
from journeybook.proof.certificate import read
from journeybook.proof.key_plate import read_plate
from journeybook.sittings.inbox import course_from
from journeybook.sittings.sitting import Vouched


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Shop:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("journeybook.proof.key_file.COST", 2**6)
        shop = Shop(tmp_path_factory.mktemp("shop"))
        shop.with_trust()
    return shop


@pytest.fixture
def shop(made: Shop, tmp_path: Path) -> Shop:
    """The shop, whose class is this test's own."""
    made.path, made.into = tmp_path / "class.sitting.json", tmp_path / "certificates"
    return made


def lines(shop: Shop, *more: str, **given: Any) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = json.loads(shop.certify("--json", *more, **given).stdout)
    return found


def alone(shop: Shop, record: Path, *more: str) -> Result:
    return shop.run(
        "certify", "--attempt", str(record), "--key", str(shop.key), "--into", str(shop.into), *more, words=WORDS,
    )  # fmt: skip


def test_two_runs_for_one_attempt_cannot_both_find_the_folder_empty(
    shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    record = tmp_path / "attempt.json"
    record.write_bytes(shop.attempt(shop.place(1)))
    shop.into.mkdir()
    monkeypatch.setattr("journeybook.sittings.sitting_file.PATIENCE", 0.1)
    handle = os.open(shop.into, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        waited = alone(shop, record)
    finally:
        os.close(handle)
    assert (waited.exit_code, list(shop.into.iterdir())) == (1, [])
    assert "Somebody else is at certificates. Wait until the other command has ended" in waited.output
    assert alone(shop, record).exit_code == 0
    assert len(list(shop.into.iterdir())) == 2


def test_who_is_vouched_for_while_it_runs_without_a_key_is_told_to_wait_for_the_next_run(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    course = course_from(shop.compiled.read_bytes())
    assert course is not None
    shop.into.mkdir()
    # Nobody had earned anything when it was asked, so no passphrase was typed.
    desk = Desk(
        course=course, plate=read_plate(shop.key.read_text(encoding="utf-8")), private=None, trust=None,
        folder=shop.into, now=datetime.now(UTC),
    )  # fmt: skip
    (line,) = certify_sitting(shop.path, desk)
    assert (line.outcome, line.needs_somebody, [each.mend for each in line.reasons]) == (
        NOT_ISSUED, True, ["Run this again."]
    )  # fmt: skip
    assert list(shop.into.iterdir()) == []


def test_an_example_in_the_folder_is_not_taken_for_what_was_earned(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    (example,) = lines(shop, key=shop.demo)
    shop.seat(shop.sat(shop.place(1)))  # The run broke off before it was noted.
    (line,) = lines(shop)
    assert (line["outcome"], line["certificate"] != example["certificate"]) == ("issued", True)
    assert read((shop.into / line["file"].replace(".pdf", ".json")).read_bytes()).example is False


def test_but_what_was_earned_stands_when_things_are_tried_out(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    (real,) = lines(shop)
    shop.seat(shop.sat(shop.place(1)))
    (line,) = lines(shop, key=shop.demo)
    assert (line["outcome"], line["certificate"]) == ("already issued", real["certificate"])


def test_an_example_that_is_noted_is_said_to_be_worth_nothing_with_the_way_to_a_real_one(shop: Shop) -> None:
    shop.seat(shop.sat(shop.place(1)))
    (example,) = lines(shop, key=shop.demo)
    (line,) = lines(shop, words=None)
    assert (line["outcome"], line["notes"]) == (
        "already issued",
        [
            "It is an example, signed to try things out, and worth nothing at work. For a real one, withdraw this one "
            f"with `journeybook trust withdraw … {example['certificate']} --reason replaced`, then: --again "
            f"{line['ticket']}"
        ],
    )


def test_a_single_attempt_that_was_vouched_for_since_is_told_the_way_to_a_certificate_that_says_so(
    shop: Shop, tmp_path: Path
) -> None:
    record = tmp_path / "attempt.json"
    record.write_bytes(shop.attempt(shop.place(1)))

    def certified(*more: str) -> dict[str, Any]:
        (line,) = json.loads(alone(shop, record, "--json", *more).stdout)
        return dict(line)

    first = certified()
    print_of_it = fingerprint(record.read_bytes())
    again = certified(
        "--vouched-by", "T. Marrable", "--identity", "Works pass", "--fingerprint", print_of_it, "--on", DAY.isoformat()
    )  # fmt: skip
    assert (first["outcome"], first["check"]) == ("issued", "self-recorded")
    assert (again["outcome"], again["certificate"]) == ("already issued", first["certificate"])
    assert again["notes"] == [
        "Since then the check was vouched for. For a certificate that says so, withdraw this one with "
        f"`journeybook trust withdraw … {first['certificate']} --reason replaced`, then: run this again"
    ]


def test_a_name_that_looks_like_two_names_no_observer_on_the_paper(shop: Shop) -> None:
    word = Vouched(by="T. Marrable (check); A. Fenwright (practical)", on=DAY, identity="Works pass")
    shop.seat(replace(shop.sat(shop.place(1), seen=False), vouched=word))
    (line,) = lines(shop, "--record-only")
    certificate = read((shop.into / line["file"]).read_bytes())
    sheet = sheet_of(certificate, shop.content, holder="T. Märrable", role="training lead")
    assert (certificate.practical, sheet.assessor, sheet.observer) == ("not observed", word.by, "")

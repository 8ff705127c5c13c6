"""A certificate is withdrawn by the file that somebody has, nothing by one that is none, and it stays withdrawn."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from yard_certificates import KEY as STRANGER
from yard_certificates import PASSED

from journeybook.cli import main
from journeybook.proof.certificate import write
from journeybook.proof.did_key import did_of
from journeybook.proof.key_file import open_key
from journeybook.proof.trust_list import read

WORDS = "anvil lamp river stone gate oak"
NOW = datetime.now(UTC)


def run(*words: str) -> Result:
    reading, writing = os.pipe()
    os.write(writing, WORDS.encode() + b"\n")
    os.close(writing)
    try:
        return CliRunner().invoke(main, [*words, "--passphrase-fd", str(reading)], catch_exceptions=False)
    finally:
        os.close(reading)


@pytest.fixture
def withdraw(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[str], Result]:
    """Withdraws by what is named, from trust.json, with the key in k.pem."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("journeybook.proof.key_file.COST", 2**6)
    who = ("--holder", "T. Marrable", "--role", "training lead", "--own-words")
    assert run("key", "make", "k.pem", *who).exit_code == 0
    assert (
        run("trust", "start", "trust.json", "--key", "k.pem", "--holder", "Quillon Basin Works").exit_code
        == 0
    )

    def by(named: str) -> Result:
        return run("trust", "withdraw", "trust.json", named, "--reason", "mistake", "--key", "k.pem")

    return by


def signed() -> bytes:
    """A certificate of today by the key of the list."""
    key = open_key(Path("k.pem"), WORDS)
    held = replace(
        PASSED,
        issuer=did_of(key.public_key().public_bytes_raw()),
        valid_from=NOW.strftime("%Y-%m-%dT%H:%M:%SZ"),
        valid_until=f"{NOW.year + 1}-01-01T23:59:59Z",
        retrain_by=date(NOW.year + 1, 1, 1),
        checked=NOW.date(),
    )
    return write(held, key)


def test_the_file_is_enough_and_says_whose_it_is(withdraw: Callable[[str], Result]) -> None:
    Path("okafor.json").write_bytes(signed())
    said = withdraw("okafor.json")
    assert said.exit_code == 0, said.output
    assert "Inès Okafor (1042)" in said.output
    entry = read(Path("trust.json").read_bytes()).withdrawal_of(PASSED.id)
    assert entry is not None
    assert entry.reason == "mistake"
    again = withdraw("okafor.json")
    assert again.exit_code == 1
    assert "already" in again.output


@pytest.mark.parametrize("what", ["none", "altered", "of a stranger"])
def test_a_file_that_no_key_of_the_list_signed_withdraws_nothing(
    withdraw: Callable[[str], Result], what: str
) -> None:
    wrong = {
        "none": b"{}",
        "altered": signed().replace(b"Okafor", b"Okafot"),
        "of a stranger": write(PASSED, STRANGER),
    }
    Path("okafor.json").write_bytes(wrong[what])
    before = Path("trust.json").read_bytes()
    said = withdraw("okafor.json")
    assert said.exit_code == 1
    assert "Nothing was withdrawn" in said.output
    assert Path("trust.json").read_bytes() == before


def test_a_name_of_no_file_is_told_what_may_be_named(withdraw: Callable[[str], Result]) -> None:
    said = withdraw("okafor.pdf")
    assert said.exit_code == 2
    assert "Name the PDF, its record, or the id" in said.output


def test_a_list_in_place_of_one_that_nobody_can_sign_keeps_what_was_withdrawn(
    withdraw: Callable[[str], Result],
) -> None:
    Path("okafor.json").write_bytes(signed())
    assert withdraw("okafor.json").exit_code == 0
    assert (
        run("key", "make", "b.pem", "--holder", "J. Vane", "--role", "foreman", "--own-words").exit_code == 0
    )
    begin = ("trust", "start", "new.json", "--key", "b.pem", "--holder", "Quillon Basin Works")
    said = run(*begin, "--in-place-of", "trust.json")
    assert said.exit_code == 0, said.output
    assert "as in trust.json: 1." in said.output
    old, new = (read(Path(name).read_bytes()) for name in ("trust.json", "new.json"))
    assert new.withdrawn == old.withdrawn
    assert {key.did for key in new.keys}.isdisjoint(key.did for key in old.keys)


@pytest.mark.usefixtures("withdraw")
def test_a_list_is_not_begun_in_place_of_what_is_none() -> None:
    Path("none.json").write_bytes(b"{}")
    begin = ("trust", "start", "new.json", "--key", "k.pem", "--holder", "Quillon Basin Works")
    said = run(*begin, "--in-place-of", "none.json")
    assert said.exit_code == 1
    assert "not a trust list" in said.output
    assert not Path("new.json").exists()

"""A key is written once, encrypted, for its owner alone, and opens with its passphrase in programs other than ours."""

from __future__ import annotations

import os
import shutil
import stat
import subprocess
from pathlib import Path

import pytest
from cryptography.hazmat.primitives.asymmetric.ec import SECP256R1, generate_private_key
from cryptography.hazmat.primitives.serialization import (
    BestAvailableEncryption,
    Encoding,
    NoEncryption,
    PrivateFormat,
)

from journeybook.proof.key_file import KeyRefused, encrypted, open_key, pem, refuse_place, write_key

SEED = bytes(range(32))
WORDS = "oak anvil lamp river stone gate"


@pytest.fixture(scope="module")
def key(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("keys") / "trainer-2026.pem"
    write_key(path, SEED, WORDS)
    return path


def refusal(path: Path, passphrase: str = WORDS) -> str:
    with pytest.raises(KeyRefused) as refused:
        open_key(path, passphrase)
    return refused.value.reason


def test_the_key_comes_back(key: Path) -> None:
    assert open_key(key, WORDS).private_bytes_raw() == SEED


@pytest.mark.skipif(shutil.which("openssl") is None, reason="no openssl here")
def test_openssl_opens_it_too(key: Path) -> None:
    reading, writing = os.pipe()
    os.write(writing, WORDS.encode() + b"\n")
    os.close(writing)
    opened = subprocess.run(
        ["openssl", "pkey", "-in", str(key), "-passin", f"fd:{reading}", "-outform", "DER"],
        pass_fds=[reading],
        capture_output=True,
        check=True,
    )
    os.close(reading)
    assert opened.stdout.endswith(SEED)


def test_only_its_owner_reads_it_and_nothing_unfinished_stays(key: Path) -> None:
    assert stat.S_IMODE(key.stat().st_mode) == 0o600
    assert [each.name for each in key.parent.iterdir()] == ["trainer-2026.pem"]


def test_the_seed_does_not_stand_in_it(key: Path) -> None:
    der = encrypted(SEED, WORDS, bytes(16), bytes(16))
    assert SEED not in der
    assert key.read_bytes() != pem(der), "salt and iv are drawn anew"


def test_a_key_is_never_written_over(key: Path) -> None:
    before = key.read_bytes()
    with pytest.raises(KeyRefused) as refused:
        write_key(key, bytes(32), WORDS)
    assert refused.value.reason == "there"
    assert key.read_bytes() == before


def test_what_a_broken_off_writing_left_does_not_stand_in_the_way(tmp_path: Path) -> None:
    (tmp_path / "key.pem.unfinished").write_text("half")
    write_key(tmp_path / "key.pem", SEED, WORDS)
    assert [each.name for each in tmp_path.iterdir()] == ["key.pem"]


def test_an_accent_typed_in_two_ways_is_the_same_passphrase(tmp_path: Path) -> None:
    write_key(tmp_path / "key.pem", SEED, "caf\u00e9")
    assert open_key(tmp_path / "key.pem", "cafe\u0301").private_bytes_raw() == SEED


@pytest.mark.parametrize("passphrase", ["oak anvil", WORDS.upper(), ""])
def test_another_passphrase_does_not_open_it(key: Path, passphrase: str) -> None:
    assert refusal(key, passphrase) == "passphrase"


def test_an_empty_passphrase_protects_nothing(tmp_path: Path) -> None:
    with pytest.raises(KeyRefused, match="empty"):
        write_key(tmp_path / "key.pem", SEED, "")
    assert not list(tmp_path.iterdir())


def test_a_file_that_is_missing_damaged_huge_or_not_encrypted_gives_no_key(key: Path, tmp_path: Path) -> None:
    path = tmp_path / "key.pem"
    assert refusal(path) == "missing"
    text = key.read_bytes()
    path.write_bytes(text[:200] + text[204:])
    assert refusal(path) == "passphrase"
    path.write_bytes(text + bytes(8192))
    assert refusal(path) == "unreadable"
    path.write_bytes(open_key(key, WORDS).private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption()))
    assert refusal(path) == "unreadable"


def test_a_key_of_another_kind_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "key.pem"
    other = generate_private_key(SECP256R1())
    path.write_bytes(
        other.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, BestAvailableEncryption(WORDS.encode()))
    )
    assert refusal(path) == "kind"


@pytest.mark.parametrize("length", [0, 31, 64])
def test_a_seed_of_another_length_is_no_key(length: int) -> None:
    with pytest.raises(ValueError, match="32 bytes"):
        encrypted(bytes(length), WORDS, bytes(16), bytes(16))


@pytest.mark.parametrize("mark", [".git", "assets/journeybook.js"])
def test_a_key_is_not_put_where_it_would_be_copied(tmp_path: Path, mark: str) -> None:
    (tmp_path / mark).parent.mkdir(exist_ok=True)
    (tmp_path / mark).touch()
    with pytest.raises(KeyRefused) as refused:
        refuse_place(tmp_path / "safe" / "key.pem", [])
    assert refused.value.reason == "place"


def test_a_key_is_not_put_beside_the_courses(tmp_path: Path) -> None:
    with pytest.raises(KeyRefused, match="beside the courses"):
        refuse_place(tmp_path / "course_src" / "one" / "key.pem", [tmp_path / "course_src"])
    refuse_place(tmp_path / "safe" / "key.pem", [tmp_path / "course_src"])

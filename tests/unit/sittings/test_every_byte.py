"""One byte changed, at every place and to every other value: a seal does not open, and an attempt is not the same one.

Exhaustive: all places times all 255 other values. The key of the seal is derived once.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from class_of_three import ROBIN, attempt
from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import AESGCM

from journeybook.marking import canonical
from journeybook.marking.attempt import NotAnAttempt, read
from journeybook.marking.fingerprint import fingerprint
from journeybook.sittings import sealed_blob

SALT, IV = bytes(range(16)), bytes(range(100, 112))
KEY = sealed_blob.key_of("guard mango river stone ladder zebra", SALT)
CONTENT = {"places": {}, "sitting": "Tü"}
RECORD = sealed_blob.seal({"course": "drill", "title": "Tü"}, CONTENT, KEY, salt=SALT, iv=IV)


def changed_in_one_byte(whole: bytes) -> Iterator[tuple[int, bytes]]:
    """Every other byte in every place."""
    for at in range(len(whole)):
        before, after = whole[:at], whole[at + 1 :]
        for byte in range(256):
            if byte != whole[at]:
                yield at, before + bytes([byte]) + after


def test_the_seal_that_is_changed_here_opens_as_it_is() -> None:
    data = canonical.write(RECORD)
    assert sealed_blob.unseal_with(sealed_blob.read_record(data), KEY) == CONTENT


@pytest.mark.parametrize("what", ["data", "iv", "facts", "key"])
def test_no_changed_byte_passes_the_cipher(what: str) -> None:
    head = {name: value for name, value in RECORD.items() if name != "data"}
    parts = {
        "data": sealed_blob.from_text(RECORD["data"]),
        "iv": IV,
        "facts": canonical.write(head),
        "key": KEY,
    }
    count = 0
    for at, changed in changed_in_one_byte(parts[what]):
        now = {**parts, what: changed}
        with pytest.raises(InvalidTag):
            AESGCM(now["key"]).decrypt(now["iv"], now["data"], now["facts"])
        count += 1
        assert at < len(parts[what])
    assert count == 255 * len(parts[what])


def test_no_changed_byte_of_the_record_in_the_page_is_opened() -> None:
    """The whole way: canonical JSON, its members, base64 that is the only text of its bytes, the cipher."""
    data = canonical.write(RECORD)
    opened = []
    for at, changed in changed_in_one_byte(data):
        try:
            sealed_blob.unseal_with(sealed_blob.read_record(changed), KEY)
        except sealed_blob.NotOpened:
            continue
        opened.append((at, changed))
    assert opened == []


def test_every_changed_byte_of_an_attempt_shows_in_its_fingerprint() -> None:
    whole = attempt(ROBIN)
    true = fingerprint(whole)
    same = [at for at, changed in changed_in_one_byte(whole) if fingerprint(changed) == true]
    assert same == []


def test_an_attempt_with_a_changed_byte_is_refused_or_is_another_record() -> None:
    """Where the changed bytes are still a record, it says something else: no two texts are read as one attempt."""
    whole = attempt(ROBIN)
    true = read(whole)
    refused = others = 0
    for _, changed in changed_in_one_byte(whole):
        try:
            found = read(changed)
        except (canonical.NotCanonical, NotAnAttempt):
            refused += 1
            continue
        assert found != true
        others += 1
    assert refused + others == 255 * len(whole)
    assert refused > others > 0

"""Base58 gives back what it was given, and refuses what it never gives."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journeybook.proof import base58


@given(st.binary(max_size=80))
def test_any_bytes_come_back(data: bytes) -> None:
    assert base58.decode(base58.encode(data)) == data


@given(st.text(base58.ALPHABET, max_size=100))
def test_any_text_of_the_alphabet_stands_for_other_bytes_than_every_other(text: str) -> None:
    assert base58.encode(base58.decode(text)) == text


@pytest.mark.parametrize("text", ["0", "O", "I", "l", "2NEpo 7TZ", "2NEpo\n", "é", "\U0001d7d9"])
def test_a_sign_outside_the_alphabet_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="no sign of base58"):
        base58.decode(text)


def test_a_text_longer_than_any_signature_is_refused_before_it_costs_time() -> None:
    assert len(base58.decode("1" * base58.LONGEST)) == base58.LONGEST
    with pytest.raises(ValueError, match="more than 128"):
        base58.decode("1" * (base58.LONGEST + 1))

"""Base45 and base58 against the examples of their own documents.

Sources: RFC 9285 (2022), 4.3 and 4.4; draft-msporny-base58-03 (2021), 5.
"""

from __future__ import annotations

import pytest

from journeybook.proof import base45, base58


# RFC 9285, 4.3, examples 1 to 3; 4.4, example 1.
@pytest.mark.parametrize(
    ("data", "text"),
    [(b"AB", "BB8"), (b"Hello!!", "%69 VD92EX0"), (b"base-45", "UJCLQE7W581"), (b"ietf!", "QED8WEX0")],
)
def test_base45_gives_the_examples_of_the_rfc(data: bytes, text: str) -> None:
    assert base45.encode(data) == text
    assert base45.decode(text) == data


# RFC 9285, section 6: GGW stands for 65,536, which two bytes cannot hold; ::: for more still.
@pytest.mark.parametrize("text", ["GGW", ":::", "::"])
def test_base45_refuses_the_overflow_of_the_rfc(text: str) -> None:
    with pytest.raises(ValueError, match="a group is too large"):
        base45.decode(text)


# draft-msporny-base58-03, 5.
@pytest.mark.parametrize(
    ("data", "text"),
    [
        (b"Hello World!", "2NEpo7TZRRrLZSi2U"),
        (
            b"The quick brown fox jumps over the lazy dog.",
            "USm3fpXnKG5EUBx2ndxBDMPVciP5hGey2Jh4NDv6gmeo1LkMeiKrLJUUBk6Z",
        ),
        (bytes.fromhex("0000287fb4cd"), "11233QC4"),
    ],
)
def test_base58_gives_the_examples_of_its_draft(data: bytes, text: str) -> None:
    assert base58.encode(data) == text
    assert base58.decode(text) == data

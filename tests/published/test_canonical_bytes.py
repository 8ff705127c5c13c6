"""Canonical bytes and fingerprints against the RFCs' own samples and an independent library.

Sources: RFC 8785 (2020), 3.2.2 to 3.2.4; RFC 4648 (2006), section 10. Samples with floats are left out:
evidence holds none.
"""

from __future__ import annotations

import base64
import hashlib

import pytest
import rfc8785
from hypothesis import given, settings
from hypothesis import strategies as st

from journeybook.marking import canonical
from journeybook.marking.fingerprint import fingerprint

# RFC 8785, 3.2.3: the sorting sample, property names in the order in which they must come out.
SORTED = ["\r", "1", "\u0080", "\u00f6", "\u20ac", "\U0001f600", "\ufb33"]
# RFC 8785, 3.2.2: the strings and literals of the sample object; its numbers are floats.
STRING = "\u20ac$\u000f\u000aA'\u0042\u0022\u005c\\\"\u002f"


def test_keys_come_out_in_the_order_of_the_rfc() -> None:
    written = canonical.write(dict.fromkeys(reversed(SORTED), 0))
    assert written == canonical.write(dict.fromkeys(SORTED, 0))
    positions = [written.index(rfc8785.dumps(name)) for name in SORTED]
    assert positions == sorted(positions)


def test_the_string_of_the_rfc() -> None:
    # RFC 8785, 3.2.4 gives these bytes.
    expected = bytes.fromhex("22 e2 82 ac 24 5c 75 30 30 30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22")
    assert canonical.write(STRING) == expected


def test_the_literals_of_the_rfc() -> None:
    assert canonical.write({"literals": [None, True, False]}) == b'{"literals":[null,true,false]}'


values = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-canonical.LARGEST, canonical.LARGEST)
    | st.text(st.characters(exclude_categories=["Cs"])),
    lambda inner: (
        st.lists(inner, max_size=6)
        | st.dictionaries(st.text(st.characters(exclude_categories=["Cs"]), max_size=6), inner, max_size=6)
    ),
    max_leaves=30,
)


@settings(max_examples=500, deadline=None)
@given(values)
def test_bytes_equal_those_of_the_rfc8785_package(value: canonical.Json) -> None:
    assert canonical.write(value) == rfc8785.dumps(value)


@settings(max_examples=300, deadline=None)
@given(values)
def test_what_was_written_is_read_back(value: canonical.Json) -> None:
    assert canonical.read(canonical.write(value)) == value


@pytest.mark.parametrize("number", [2**53, -(2**53)])
def test_the_package_and_we_refuse_the_same_integers(number: int) -> None:
    with pytest.raises(rfc8785.IntegerDomainError):
        rfc8785.dumps(number)
    with pytest.raises(canonical.NotCanonical):
        canonical.write(number)


def test_the_fingerprint_uses_the_alphabet_of_rfc_4648() -> None:
    # RFC 4648, section 10: BASE32("foobar") = "MZXW6YTBOI======".
    assert base64.b32encode(b"foobar") == b"MZXW6YTBOI======"
    record = b"abc"
    plain = fingerprint(record).replace("-", "")
    assert base64.b32decode(plain) == hashlib.sha256(record).digest()[:10]


def test_the_fingerprint_has_four_groups_of_four() -> None:
    # SHA-256("abc") starts ba7816bf8f01cfea4141 (FIPS 180-4).
    assert fingerprint(b"abc") == "XJ4B-NP4P-AHH6-UQKB"

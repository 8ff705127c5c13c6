"""Bytes that are not canonical are refused, each for its own reason."""

from __future__ import annotations

import time

import pytest

from journeybook.marking import canonical


@pytest.mark.parametrize(
    ("data", "reason", "detail"),
    [
        pytest.param(b"\xff", "utf-8", "Byte 1 is not UTF-8.", id="not UTF-8"),
        pytest.param(b'{"a":', "json", "Line 1, column 6: expecting value.", id="cut short"),
        pytest.param(
            b'{"a":1,"a":2}', "duplicate", "The key “a” stands twice in one object.", id="a key twice"
        ),
        pytest.param(b"[1.5]", "number", "1.5 is not an integer.", id="a fraction"),
        pytest.param(b"[NaN]", "number", "NaN is not an integer.", id="not a number"),
        pytest.param(b"[-Infinity]", "number", "-Infinity is not an integer.", id="infinity"),
        pytest.param(
            b"9007199254740992", "number", "The integer 9007199254740992 is beyond 2^53 - 1.", id="2^53"
        ),
        pytest.param(
            b"9" * 10_000,
            "number",
            "The integer 999999999999999999999... is beyond 2^53 - 1.",
            id="endless digits",
        ),
        pytest.param(b'"\\ud800"', "surrogate", "A text holds half of a surrogate pair.", id="half a pair"),
        pytest.param(
            b'{"b":1,"a":1}',
            "form",
            "The bytes differ from the canonical form of their contents.",
            id="order",
        ),
        pytest.param(
            b"[1] ", "form", "The bytes differ from the canonical form of their contents.", id="a space"
        ),
        pytest.param(
            b'"\\u00e9"',
            "form",
            "The bytes differ from the canonical form of their contents.",
            id="an escape",
        ),
        pytest.param(
            b"[" * 33 + b"]" * 33, "depth", "Lists and objects are nested more than 32 deep.", id="33 deep"
        ),
        pytest.param(
            b"[" * 500_000, "depth", "Lists and objects are nested more than 32 deep.", id="bottomless"
        ),
        pytest.param(b" " * (2**20 + 1), "size", "The file is larger than 1048576 bytes.", id="too large"),
    ],
)
def test_a_file_is_refused(data: bytes, reason: str, detail: str) -> None:
    with pytest.raises(canonical.NotCanonical) as raised:
        canonical.read(data)
    assert (raised.value.reason, raised.value.detail) == (reason, detail)


def test_brackets_in_texts_are_not_depth() -> None:
    data = canonical.write(["[" * 100, '"[{' * 50, "\\" * 3 + "[" * 40])
    assert canonical.read(data) == ["[" * 100, '"[{' * 50, "\\" * 3 + "[" * 40]


def test_a_file_of_exactly_the_cap_is_read() -> None:
    data = b'"' + b"a" * (2**20 - 2) + b'"'
    assert canonical.read(data) == "a" * (2**20 - 2)


@pytest.mark.parametrize(
    ("value", "reason"),
    [
        pytest.param(0.5, "number", id="a float"),
        pytest.param(1.0, "number", id="a whole float"),
        pytest.param(2**53, "number", id="a large integer"),
        pytest.param({1: "a"}, "type", id="a key that is no text"),
        pytest.param(b"a", "type", id="bytes"),
        pytest.param({"a": {"b": "\udc00"}}, "surrogate", id="half a pair in a value"),
        pytest.param({"\udc00": 1}, "surrogate", id="half a pair in a key"),
    ],
)
def test_a_value_is_refused(value: canonical.Json, reason: str) -> None:
    with pytest.raises(canonical.NotCanonical) as raised:
        canonical.write(value)
    assert raised.value.reason == reason


def test_a_key_twice_among_very_many_is_found_at_once() -> None:
    members = ",".join(f'"{number:05}":0' for number in [*range(90_000), 89_999])
    started = time.perf_counter()
    with pytest.raises(canonical.NotCanonical) as raised:
        canonical.read(f"{{{members}}}".encode())
    assert (raised.value.reason, raised.value.detail) == (
        "duplicate",
        "The key “89999” stands twice in one object.",
    )
    assert time.perf_counter() - started < 5, "the time grows with the square of the keys"

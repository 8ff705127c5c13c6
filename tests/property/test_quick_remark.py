"""Marking very many records quickly gives what marking each carefully gives, or leaves it to that."""

from __future__ import annotations

import hashlib
import sys
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journeybook.marking import canonical
from journeybook.marking.draw import draw_form
from journeybook.marking.lanes import first_numbers, numbers
from journeybook.marking.quick_form import QuickForms
from journeybook.marking.remark import Marker
from journeybook.marking.stream import Stream, stream

sys.path.insert(0, str(Path(__file__).parents[2] / "benchmarks"))
from remark_time import attempts, course

COMPILED, PLAN, ANSWERS = course()
MARKER = Marker(COMPILED)
DEMO = canonical.read(
    (Path(__file__).parents[1] / "kept/format-1/releases/1.0/uk/compiled.json").read_bytes(), 1 << 28
)
DEMO_PLAN: Any = DEMO["public"]["plan"]  # type: ignore[index, call-overload]


@given(st.lists(st.binary(min_size=32, max_size=32), max_size=70), st.integers(1, 9))
def test_streams_side_by_side_give_the_numbers_of_each(digests: list[bytes], steps: int) -> None:
    alone = []
    for digest in digests:
        words = [int.from_bytes(digest[at : at + 4], "big") for at in (0, 4, 8, 12)]
        if not any(words):
            return
        one = Stream((words[0], words[1], words[2], words[3]))
        alone.append([one.next() for _ in range(steps)])
    if digests:
        assert [list(each) for each in zip(*numbers(digests, steps), strict=True)] == alone
    assert list(first_numbers(digests)) == [each[0] for each in alone]


def test_lanes_agree_with_a_seeded_stream() -> None:
    digest = hashlib.sha256(b"seed\nflow-01\noptions").digest()
    one = stream("seed", "flow-01", "options")
    assert [each[0] for each in numbers([digest], 5)] == [one.next() for _ in range(5)]


@settings(deadline=None, max_examples=300)
@given(st.text(min_size=1, max_size=20))
@pytest.mark.parametrize("plan", [PLAN, DEMO_PLAN], ids=["benchmark", "kept"])
def test_a_form_drawn_as_text_is_the_form(plan: Any, seed: str) -> None:
    quick = QuickForms(plan).form(seed)
    assert quick is not None
    form = draw_form(plan, seed, ())
    assert f"[{quick[0]}]".encode() == canonical.write([*form])
    assert quick[1] == [(each["q"], each["variant"]) for each in form]


RECORDS = attempts(40, MARKER.digest, PLAN, ANSWERS, 0)


@pytest.mark.parametrize("number", range(len(RECORDS)))
def test_a_record_in_order_gets_the_same_result_both_ways(number: int) -> None:
    quick = MARKER._quick
    assert quick is not None
    result = quick.result(RECORDS[number])
    assert result is not None
    assert result == MARKER.re_mark(RECORDS[number]).result


def test_every_kept_record_gets_its_result() -> None:
    kept = Path(__file__).parents[1] / "kept" / "format-1"
    marker = Marker((kept / "releases/1.0/uk/compiled.json").read_bytes())
    for path in sorted(kept.glob("attempt-*.json")):
        result = marker.result(path.read_bytes())
        assert result is not None
        assert result == marker.re_mark(path.read_bytes()).result


def changes() -> st.SearchStrategy[tuple[int, bytes, int]]:
    piece = st.sampled_from([
        b"", b'"', b"\\", b" ", b"\n", b",", b"{", b"}", b"[", b"]", b"0", b"1", b"-", b"null", b"true", b"\xff",
        b"\xc3\xa9",
        b'"a":', b'},"avoid":[', b'"avoid":["x"]', b'],"format":"', b'"oa"', b"\\u0041", b"1.0", b"e9", b"\xed\xa0\x80",
    ])  # fmt: skip
    return st.tuples(st.integers(0, 9000), piece | st.binary(max_size=3), st.integers(0, 12))


@settings(deadline=None, max_examples=1500)
@given(st.integers(0, len(RECORDS) - 1), st.lists(changes(), min_size=1, max_size=3))
def test_a_changed_record_never_gets_a_result_that_careful_marking_refuses(
    number: int, edits: list[tuple[int, bytes, int]]
) -> None:
    data = RECORDS[number]
    for at, piece, gone in edits:
        at %= len(data)
        data = data[:at] + piece + data[at + gone :]
    careful = MARKER.re_mark(data).result
    quick = MARKER._quick
    assert quick is not None
    found = quick.result(data)
    assert found is None or found == careful
    assert MARKER.result(data) == careful


def test_each_single_changed_byte_is_judged_alike() -> None:
    data = RECORDS[0]
    quick = MARKER._quick
    assert quick is not None
    for at in range(len(data)):
        changed = data[:at] + bytes([data[at] ^ 1]) + data[at + 1 :]
        found = quick.result(changed)
        if found is not None:
            assert found == MARKER.re_mark(changed).result


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (b'"avoid":[]', b'"avoid":["topic-0-question-0"]'),
        (b'"avoid":[]', b'"avoid":["elsewhere"]'),
        (b'"name":"Person 0"', b'"name":"R\xc3\xb3bin \\"Ash\\" Down"'),
        (b'"started":"2026-11-24', b'"started":"2026-11-25'),
        (b'"started":"2026-11-24', b'"started":"2026-02-31'),
        (b'"name":"Person 0"', b'"name":"Person 0\x7f"'),
    ],
)
def test_what_is_left_to_careful_marking_is_decided_there(old: bytes, new: bytes) -> None:
    data = RECORDS[0].replace(old, new)
    assert data != RECORDS[0]
    assert MARKER.result(data) == MARKER.re_mark(data).result

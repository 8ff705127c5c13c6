"""Whatever the bytes: a document, or a fault with a place inside the file; no exception, no hang."""

from __future__ import annotations

import random
from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journeybook.diagnostics.problem import Level, Place, Problem
from journeybook.diagnostics.render_text import render_text
from journeybook.source.decoding import lines_to_show
from journeybook.source.document import Document
from journeybook.source.strict_yaml import read_document

FAULTS = Path(__file__).parents[1] / "faults" / "source"

GOOD = """\
title: "Flow checks"
questions:
  - id: flow-03
    kind: choice
    use: check
    source: [kit, cfr-84]
    ask: |
      How far up does the float stand?

      - above the line
    why: 'It''s the least that is enough: 170 L/min.'
    minutes: 6
    tolerance: 2.5
    options:
      - {id: a, text: "Above", reason: null}
      - id: b
        text: >-
          Below
          the line
    keep-order: true
# a comment
draft: false
"""

PIECES = (
    *"abcno019 \t\n\r-:#'\"[]{},&*!|>%@`?~.=<\\\x00\x07\x85\u2028\ufeffé面\U0001f600",
    "\n  ",
    "\n    - ",
    ": ",
    "- ",
    " #",
    "\n---\n",
    "\n...\n",
    "<<: ",
    "&a ",
    "*a",
    "!!str ",
    "%YAML 1.1\n",
    "yes",
    "012",
    "1e3",
    "1:30",
    "'",
    '"',
    '"\\',
    "|\n",
    ">2\n",
    "key:value",
    "\n-x",
    "? ",
    "[" * 45,
    "{a: " * 12,
)

ENOUGH = {
    "max_examples": 700,
    "deadline": timedelta(seconds=1),
    "suppress_health_check": [HealthCheck.too_slow],
}
LONG = ENOUGH | {"max_examples": 7_000, "suppress_health_check": list(HealthCheck)}

yaml_like = st.lists(st.sampled_from(PIECES), max_size=60).map("".join)


@st.composite
def mutations(draw: st.DrawFn) -> bytes:
    """A good file with a few characters cut out, doubled, swapped or put in."""
    text = GOOD
    for _ in range(draw(st.integers(1, 6))):
        at = draw(st.integers(0, len(text)))
        until = at + draw(st.integers(0, 12))
        text = draw(
            st.sampled_from(
                (
                    text[:at] + text[until:],
                    text[:until] + text[at:],
                    text[:at] + draw(st.sampled_from(PIECES)) + text[at:],
                    text[:at] + draw(st.sampled_from(PIECES)) + text[until:],
                )
            )
        )
    return text.encode("utf-8")


def places_in(problem: Problem) -> list[Place]:
    return [problem.place, *problem.also_at]


def assert_sound(data: bytes) -> None:
    document, problems = read_document(data, "bank.yml")
    assert document is not None or any(problem.level is Level.FAULT for problem in problems)
    lines = lines_to_show(data)
    for place in (place for problem in problems for place in places_in(problem)):
        assert place.file == "bank.yml"
        if place.length == 0:
            assert (place.line, place.column) == (1, 1)
            continue
        assert 1 <= place.line <= len(lines)
        line = lines[place.line - 1]
        assert 1 <= place.column <= len(line) + 1
        assert place.column + place.length - 1 <= max(len(line), place.column)
    rendered = render_text(problems, lambda _: lines)
    assert not any(character < " " and character != "\n" for character in rendered)
    if document is not None:
        assert_every_place_is_found(document, document.root, len(lines))


def assert_every_place_is_found(document: Document, container: object, lines: int) -> None:
    assert 1 <= document.place(container).line <= lines
    if isinstance(container, dict):
        for key, value in container.items():
            assert type(key) is str
            assert document.place(container, key, on_key=True) <= document.place(container, key)
            if isinstance(value, dict | list):
                assert_every_place_is_found(document, value, lines)
    elif isinstance(container, list):
        for number, value in enumerate(container):
            assert 1 <= document.place(container, number).line <= lines
            if isinstance(value, dict | list):
                assert_every_place_is_found(document, value, lines)


@settings(**ENOUGH)
@given(st.binary(max_size=300))
def test_any_bytes(data: bytes) -> None:
    assert_sound(data)


@settings(**ENOUGH)
@given(yaml_like)
def test_any_text_that_looks_like_yaml(text: str) -> None:
    assert_sound(text.encode("utf-8"))


@settings(**ENOUGH)
@given(mutations())
def test_any_slip_in_a_good_file(data: bytes) -> None:
    assert_sound(data)


def test_the_good_file_is_good() -> None:
    document, problems = read_document(GOOD.encode("utf-8"), "bank.yml")
    assert problems == []
    assert document is not None


@pytest.mark.parametrize("file", sorted(FAULTS.glob("*.yml")), ids=lambda file: file.stem)
def test_any_beginning_of_a_faulty_file(file: Path) -> None:
    data = file.read_bytes()
    for end in range(len(data)):
        assert_sound(data[:end])


@pytest.mark.long
@settings(**LONG)
@given(st.binary(max_size=2_000))
def test_any_bytes_for_long(data: bytes) -> None:
    assert_sound(data)


@pytest.mark.long
@settings(**LONG)
@given(st.lists(st.sampled_from(PIECES), max_size=400).map("".join))
def test_any_text_that_looks_like_yaml_for_long(text: str) -> None:
    assert_sound(text.encode("utf-8"))


@pytest.mark.long
@settings(**LONG)
@given(mutations())
def test_any_slip_in_a_good_file_for_long(data: bytes) -> None:
    assert_sound(data)


@pytest.mark.long
@pytest.mark.parametrize("seed", range(20))
def test_large_files_of_nonsense_end_soon(seed: int) -> None:
    choose = random.Random(seed)
    assert_sound("".join(choose.choices(PIECES, k=200_000)).encode("utf-8"))

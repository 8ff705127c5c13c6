"""What the strict reader makes of a good file: plain data, and where each piece stood."""

from __future__ import annotations

from decimal import Decimal

import pytest

from journeybook.diagnostics.problem import Place
from journeybook.source.document import Document
from journeybook.source.strict_yaml import read_document


def document_of(text: str) -> Document:
    document, problems = read_document(text.encode("utf-8"), "bank.yml")
    assert problems == []
    assert document is not None
    return document


def spot(place: Place) -> tuple[int, int, int]:
    return place.line, place.column, place.length


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("true", True),
        ("false", False),
        ("null", None),
        ("", None),
        ("0", 0),
        ("-12", -12),
        ("123456789012345", 123456789012345),
        ("0.5", Decimal("0.5")),
        ("1.10", Decimal("1.10")),
        ("-0.25", Decimal("-0.25")),
        ("2026-11-20", "2026-11-20"),
        ("1.2.3", "1.2.3"),
        ("1,000", "1,000"),
        ("170 L/min", "170 L/min"),
        ("3 %", "3 %"),
        ("not yet", "not yet"),
        ("Yes, always", "Yes, always"),
        ("-x", "-x"),
        ("...", "..."),
        ("1:75", "1:75"),
        ("'no'", "no"),
        ('"012"', "012"),
        ("'~'", "~"),
        ("''", ""),
        ("[]", []),
        ("{}", {}),
    ],
)
def test_a_value_is_read_as_what_it_is(written: str, value: object) -> None:
    root = document_of(f"key: {written}\n").root
    assert root == {"key": value}
    assert type(root["key"]) is type(value)  # type: ignore[index]


def test_decimals_keep_the_digits_they_were_written_with() -> None:
    root = document_of("key: 1.10\n").root
    assert str(root["key"]) == "1.10"  # type: ignore[index]


def test_keys_stay_in_the_order_of_the_file() -> None:
    assert list(document_of("b: 1\na: 2\nc: 3\n").root) == ["b", "a", "c"]  # type: ignore[call-overload]


def test_a_block_of_text_keeps_its_lines() -> None:
    assert document_of("a: |\n  b\n\n  c # d\n").root == {"a": "b\n\nc # d\n"}


def test_the_place_of_a_value_and_of_its_key() -> None:
    document = document_of("questions:\n  - id: flow-03\n    right: c4\n")
    question = document.root["questions"][0]  # type: ignore[index]
    assert spot(document.place(question, "right")) == (3, 12, 2)
    assert spot(document.place(question, "right", on_key=True)) == (3, 5, 5)
    assert document.place(question, "right", trail="question flow-03").trail == "question flow-03"
    assert document.place(question, "right").file == "bank.yml"


def test_the_place_of_an_item_and_of_a_container() -> None:
    document = document_of("a: [b, 'c d', {e: f}]\n")
    items = document.root["a"]  # type: ignore[index]
    assert spot(document.place(items, 1)) == (1, 8, 5)
    assert spot(document.place(items, 2)) == (1, 15, 1)
    assert spot(document.place(items)) == (1, 4, 1)
    assert spot(document.place(items[2], "e")) == (1, 19, 1)


def test_a_key_that_is_not_there_gives_the_start_of_its_container() -> None:
    document = document_of("a:\n  b: 1\n")
    inner = document.root["a"]  # type: ignore[index]
    assert spot(document.place(inner, "missing")) == (2, 3, 1)
    assert spot(document.place(inner, "missing", on_key=True)) == (2, 3, 1)


def test_a_list_index_past_the_end_gives_the_start_of_the_list() -> None:
    document = document_of("a:\n  - b\n")
    assert spot(document.place(document.root["a"], 7)) == (2, 3, 1)  # type: ignore[index]


def test_a_container_of_another_document_is_refused() -> None:
    with pytest.raises(KeyError):
        document_of("a: 1\n").place({"a": 1}, "a")


@pytest.mark.parametrize(
    ("written", "length"),
    [
        ("abc", 3),
        ("'it''s'", 7),
        ('"a\\"b"', 6),
        ("12", 2),
        ("1.50", 4),
        ("true", 4),
        ("false", 5),
        ("null", 4),
        ("|\n  text", 1),
        (">-\n  text", 2),
        ("'over\n  lines'", 5),
        ("", 1),
    ],
)
def test_the_length_of_a_value_is_what_it_takes_up_on_its_first_line(written: str, length: int) -> None:
    document = document_of(f"key: {written}\n")
    assert document.place(document.root, "key").length == length


def test_places_in_a_mapping_of_many_keys() -> None:
    document = document_of("".join(f"k{number}: v{number}\n" for number in range(500)))
    assert [document.place(document.root, f"k{number}").line for number in range(500)] == list(range(1, 501))


def test_the_text_of_a_line() -> None:
    document = document_of("a: 1\r\nb: é\rc: 3\n")
    assert [document.line_text(number) for number in range(6)] == ["", "a: 1", "b: é", "c: 3", "", ""]


def test_reading_the_same_bytes_twice_gives_equal_data_and_places() -> None:
    one, other = document_of("a: [b, {c: 1.5}]\n"), document_of("a: [b, {c: 1.5}]\n")
    assert one.root == other.root
    assert one.place(one.root, "a") == other.place(other.root, "a")

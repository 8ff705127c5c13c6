from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from datetime import date
from typing import Any

import pytest

from journeybook.content.formats.named import NAMED_FILES
from journeybook.content.json_schema import FILE_KINDS
from journeybook.diagnostics.problem import Place
from journeybook.source.listing import Listing
from journeybook.source.reading import INVALID, Reading
from journeybook.source.scalars import Day, Flag, Id, NamedTexts, OneOf, Text, Whole
from journeybook.source.shapes import Field, Record, read_root
from journeybook.source.strict_yaml import read_document
from journeybook.source.unions import KindUnion, OneKeyUnion


@dataclass(frozen=True, kw_only=True)
class Peg:
    id: str
    size: int = 1
    holes: tuple[str, ...] = ()
    place: Place


PEG = Record(
    Peg,
    "peg",
    [
        Field("id", Id(), "Its id.", "a"),
        Field("size", Whole(1, 9), "How large it is.", 3, default=1),
        Field("hole-ids", Listing(Id(), or_single=True), "Where it fits.", ["h1"], default=(), name="holes"),
    ],
    id_key="id",
)


@dataclass(frozen=True, kw_only=True)
class Board:
    pegs: tuple[Peg, ...]


BOARD = Record(
    Board, "board", [Field("pegs", Listing(PEG, least=1, noun="peg"), "The pegs.", [])], placed=False
)


def read(text: str, shape: Any = PEG) -> tuple[Any, Reading]:
    document, problems = read_document(text.encode(), "pegs.yml")
    assert document is not None
    assert not problems
    return read_root(shape, document)


def value_of(shape: Any, text: str) -> tuple[Any, list[str]]:
    """What a shape makes of one value, and the codes of its problems."""
    document, problems = read_document(f"value: {text}\n".encode(), "value.yml")
    assert document is not None
    assert not problems
    reading = Reading(document)
    return shape.read(reading, document.root, "value", ""), [problem.code for problem in reading.problems]


def test_keys_become_fields_and_defaults_fill_the_rest() -> None:
    peg, reading = read("id: a\nhole-ids: [h1, h2]\n")
    assert (peg.id, peg.size, peg.holes) == ("a", 1, ("h1", "h2"))
    assert reading.problems == []


def test_the_object_knows_where_it_stood() -> None:
    peg, reading = read("id: a\nsize: 4\n")
    assert peg.place == Place(file="pegs.yml", length=2, trail="peg a")
    origin = reading.origins[id(peg)]
    assert (origin.place("size").line, origin.place("size").column) == (2, 7)
    assert origin.place("hole-ids") == peg.place


def test_one_entry_may_stand_without_its_list() -> None:
    assert read("id: a\nhole-ids: h1\n")[0].holes == ("h1",)


def test_every_problem_of_a_record_is_noted_at_once() -> None:
    peg, reading = read("size: ten\nhole-ids: [H1, h2, 3]\ncolour: red\n")
    assert peg is INVALID
    assert [problem.code for problem in reading.problems] == ["C007", "C006", "C006", "C001", "C002"]


def test_trails_are_words() -> None:
    document, _ = read_document(b"pegs:\n  - {id: a, size: 0}\n  - {size: 0}\n", "pegs.yml")
    assert document is not None
    _, reading = read_root(BOARD, document)
    assert [problem.place.trail for problem in reading.problems] == ["peg a", "peg 2", "peg 2"]


def test_a_sound_object_beside_an_unsound_one_is_still_known() -> None:
    document, _ = read_document(b"pegs:\n  - {id: a}\n  - {id: B}\n", "pegs.yml")
    assert document is not None
    value, reading = read_root(BOARD, document)
    assert value is INVALID
    assert [origin.thing.id for origin in reading.origins.values()] == ["a"]


def test_an_unknown_key_gets_the_nearest_that_is_not_taken() -> None:
    problem = read("id: a\nsize: 2\nsise: 3\n")[1].problems[0]
    assert problem.message == "A peg has no key called `sise`."
    assert problem.mend == "Take it out, or use one of id, size, hole-ids."


def test_a_file_without_keys_says_what_it_needs() -> None:
    value, reading = read("- a\n")
    assert value is INVALID
    assert reading.problems[0].message == "The file holds a list where the keys of a peg belong."


@pytest.mark.parametrize(
    ("shape", "text", "value"),
    [
        (Text(), '"170"', "170"),
        (Text(), "clean air", "clean air"),
        (Id(), "a-1", "a-1"),
        (Whole(1, 5), "5", 5),
        (Flag(), "true", True),
        (Day(), "2024-02-29", date(2024, 2, 29)),
        (Day(), '"2026-11-20"', date(2026, 11, 20)),
        (OneOf({"read": 1}), "read", 1),
        (NamedTexts(Text()), '{flow: "170", flow_high: "5"}', {"flow": "170", "flow_high": "5"}),
    ],
)
def test_a_good_value_is_read(shape: Any, text: str, value: object) -> None:
    assert value_of(shape, text) == (value, [])


@pytest.mark.parametrize(
    ("shape", "text", "code"),
    [
        (Text(), "170", "C003"),
        (Text(), "1.50", "C003"),
        (Text(), "true", "C003"),
        (Text(), "[a]", "C003"),
        (Text(), "{a: b}", "C003"),
        (Text(), "", "C004"),
        (Text(), '" "', "C004"),
        (Text(3), "abcd", "C005"),
        (Text(pattern="[ab]", rule=("it is a or b", "Write a or b."), code="C014"), "c", "C014"),
        (Id(), "A", "C006"),
        (Id(), "a--b", "C006"),
        (Id(), "12", "C006"),
        (Id(), "a" * 61, "C006"),
        (Id(), "é", "C006"),
        (Id(), "[a]", "C003"),
        (Id(), "", "C004"),
        (Whole(1, 5), "0", "C007"),
        (Whole(1, 5), "6", "C007"),
        (Whole(1, 5), "2.0", "C007"),
        (Whole(0, 1), "true", "C007"),
        (Flag(), '"true"', "C008"),
        (Flag(), "1", "C008"),
        (Day(), "2025-02-29", "C009"),
        (Day(), "20.11.2026", "C009"),
        (Day(), "2026", "C009"),
        (OneOf({"read": 1}), "reed", "C010"),
        (OneOf({"read": 1}), "[read]", "C010"),
        (Listing(Id()), "a", "C011"),
        (Listing(Id()), "", "C011"),
        (Listing(Id(), least=1), "[]", "C011"),
        (Listing(Id(), most=1), "[a, b]", "C011"),
        (Listing(Id(), or_single=True), "{a: b}", "C011"),
        (PEG, "a", "C012"),
        (NamedTexts(Text()), "[a]", "C012"),
        (NamedTexts(Text()), "{}", "C012"),
        (NamedTexts(Text()), '{A: "1"}', "C006"),
        (NamedTexts(Text()), "{a: 1}", "C003"),
        (KindUnion("kind", "peg", {"round": PEG}), "{kind: square}", "C010"),
        (KindUnion("kind", "peg", {"round": PEG}), "{kind: [round]}", "C010"),
        (KindUnion("kind", "peg", {"round": PEG}), "{id: a}", "C002"),
        (KindUnion("kind", "peg", {"round": PEG}), "round", "C012"),
    ],
)
def test_a_value_that_is_not_as_it_should_be_gets_its_code(shape: Any, text: str, code: str) -> None:
    assert value_of(shape, text) == (INVALID, [code])


@pytest.mark.parametrize(
    ("text", "code"), [("[a]", "C013"), ("[{text: a, why: b}]", "C013"), ("[{txt: a}]", "C001")]
)
def test_a_block_has_exactly_one_key_that_is_known(text: str, code: str) -> None:
    block = OneKeyUnion(
        lambda *parts: parts,
        "block",
        [Field("text", Text(), "Text.", "a"), Field("why", Text(), "Why.", "b")],
    )
    assert value_of(Listing(block), text) == (INVALID, [code])


@pytest.mark.parametrize(
    ("text", "mend"),
    [
        ("170", 'Put it in quotes: `value: "170"`.'),
        ("1.50", 'Put it in quotes: `value: "1.50"`.'),
        ("false", 'Put it in quotes: `value: "false"`.'),
    ],
)
def test_the_cure_for_a_number_is_its_own_spelling_in_quotes(text: str, mend: str) -> None:
    document, _ = read_document(f"value: {text}\n".encode(), "value.yml")
    assert document is not None
    reading = Reading(document)
    Text().read(reading, document.root, "value", "")
    assert reading.problems[0].mend == mend


def records_in(shape: Any) -> list[Record]:
    match shape:
        case Record():
            return [shape, *(one for field in shape.fields for one in records_in(field.shape))]
        case Listing():
            return records_in(shape.entry)
        case KindUnion():
            return [one for record in shape.records.values() for one in records_in(record)]
        case _:
            return []


RECORDS = [one for record, _ in FILE_KINDS.values() for one in records_in(record)]
CALLED_LIKE_THEIR_FILE = [
    id(one)
    for shape, _ in NAMED_FILES.values()
    for one in (shape.records.values() if isinstance(shape, KindUnion) else [shape])
]
"""What these have for an id is the name of the file."""


@pytest.mark.parametrize("record", RECORDS, ids=lambda record: record.title)
def test_a_table_gives_every_field_of_its_class(record: Record) -> None:
    given = {"place", "bank"} | ({"id"} if id(record) in CALLED_LIKE_THEIR_FILE else set())
    fields = {field.name: field for field in dataclasses.fields(record.make) if field.name not in given}
    offered = {field.model_name for field in record.fields}
    assert offered <= fields.keys()
    # Two tables may make one class; what one of them leaves out has a value without it.
    assert all(fields[name].default is not dataclasses.MISSING for name in fields.keys() - offered)
    assert record.placed == ("place" in {field.name for field in dataclasses.fields(record.make)})

from __future__ import annotations

from dataclasses import dataclass, replace

import pytest

from journeybook.diagnostics.problem import Place
from journeybook.source.document import Document
from journeybook.source.placed import Placed
from journeybook.source.scalars import Id
from journeybook.source.shapes import Field, Record, read_root
from journeybook.source.strict_yaml import read_document


@dataclass(frozen=True, kw_only=True)
class Peg(Placed):
    id: str
    place: Place


PEG = Record(Peg, "peg", [Field("id", Id(), "Its id.", "a")], id_key="id")


def peg(text: str) -> Peg:
    document, _ = read_document(text.encode(), "pegs.yml")
    assert document is not None
    found, _ = read_root(PEG, document)
    assert isinstance(found, Peg)
    return found


def test_a_place_is_there_when_it_is_asked_for() -> None:
    assert peg("\n\nid: a\n").place == Place(file="pegs.yml", line=3, length=2, trail="peg a")


def test_a_place_is_worked_out_once(monkeypatch: pytest.MonkeyPatch) -> None:
    one = peg("id: a\n")
    first = one.place

    def refuse(*_args: object, **_named: object) -> Place:
        raise AssertionError("asked again")

    monkeypatch.setattr(Document, "place", refuse)
    assert one.place is first


def test_places_count_where_objects_are_compared_shown_and_copied() -> None:
    assert peg("id: a\n") == peg("id: a\n")
    assert peg("id: a\n") != peg("\nid: a\n")
    assert "line=2" in repr(peg("\nid: a\n"))
    assert replace(peg("\nid: a\n"), id="b").place.line == 2


def test_other_names_are_still_unknown() -> None:
    with pytest.raises(AttributeError, match="'Peg' object has no attribute 'size'"):
        _ = peg("id: a\n").size  # type: ignore[attr-defined]

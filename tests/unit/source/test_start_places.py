from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from journeybook.source.strict_yaml import read_document

BASE = Path(__file__).parents[2] / "faults" / "base"


def mappings_in(value: Any) -> list[dict[str, Any]]:
    if isinstance(value, dict):
        return [value, *(one for inner in value.values() for one in mappings_in(inner))]
    return [one for inner in value for one in mappings_in(inner)] if isinstance(value, list) else []


@pytest.mark.parametrize("path", sorted(BASE.rglob("*.yml")), ids=lambda path: path.name)
def test_the_short_way_to_a_mappings_start_is_the_long_way(path: Path) -> None:
    document, _ = read_document(path.read_bytes(), path.name)
    assert document is not None
    for mapping in mappings_in(document.root):
        long_way = document._place(document._starts[id(mapping)][0], mapping, "a trail")
        assert document.place(mapping, trail="a trail") == long_way


def test_a_first_key_in_quotes_and_an_empty_mapping_have_their_places() -> None:
    document, _ = read_document(b'a: {}\nb:\n  "c d": 1\n', "x.yml")
    assert document is not None
    root: Any = document.root
    assert (document.place(root["a"]).column, document.place(root["a"]).length) == (4, 1)
    assert (document.place(root["b"]).line, document.place(root["b"]).length) == (3, 5)

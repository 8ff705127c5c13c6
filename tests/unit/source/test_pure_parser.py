"""The reader says the same with PyYAML's parser in Python as with the one in C."""

from __future__ import annotations

from pathlib import Path

import pytest

from journeybook.source import strict_yaml
from journeybook.source.pure_parser import PureParser

FAULTS = Path(__file__).parents[2] / "faults" / "source"


@pytest.mark.parametrize("file", sorted(FAULTS.glob("*.yml")), ids=lambda file: file.stem)
def test_a_faulty_file_gives_the_same_problems(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    data = file.read_bytes()
    _, problems = strict_yaml.read_document(data, file.name)
    monkeypatch.setattr(strict_yaml, "_Parser", PureParser)
    assert strict_yaml.read_document(data, file.name)[1] == problems


def test_a_good_file_gives_the_same_data_and_places(monkeypatch: pytest.MonkeyPatch) -> None:
    data = b"a: [1, '2', {b: 2.5}]\nc:\n  - d: |\n      e\n    f:\n  - \"g\"\n"
    fast, _ = strict_yaml.read_document(data, "x.yml")
    monkeypatch.setattr(strict_yaml, "_Parser", PureParser)
    slow, problems = strict_yaml.read_document(data, "x.yml")
    assert problems == []
    assert fast is not None
    assert slow is not None
    assert slow.root == fast.root
    assert slow.place(slow.root, "c") == fast.place(fast.root, "c")


@pytest.mark.parametrize("escape", ["UFFFFFFFF", "ud800", "U00110000"])
def test_an_escape_beyond_all_characters_is_a_fault(escape: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(strict_yaml, "_Parser", PureParser)
    _, problems = strict_yaml.read_document(f'a: "b\\{escape}"\n'.encode(), "x.yml")
    assert len(problems) == 1
    assert problems[0].code in ("S004", "S034")

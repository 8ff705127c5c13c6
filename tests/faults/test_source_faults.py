"""Each file in source/ is wrong as trainers' files are; beside it stands what they read then, whole."""

from __future__ import annotations

from pathlib import Path

import pytest

from journeybook.diagnostics.codes import CODES
from journeybook.diagnostics.render_text import render_text
from journeybook.source.decoding import lines_to_show
from journeybook.source.strict_yaml import read_document

FOLDER = Path(__file__).parent / "source"
FILES = sorted(FOLDER.glob("*.yml"))
TOO_LARGE_TO_KEEP = {"S001", "S033"}


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_faulty_file_gives_the_text_beside_it(file: Path) -> None:
    data = file.read_bytes()
    _, problems = read_document(data, file.name)
    rendered = render_text(problems, lambda _: lines_to_show(data))
    assert rendered == file.with_suffix(".txt").read_text(encoding="utf-8")


def test_every_expected_text_has_its_file() -> None:
    assert [file.stem for file in sorted(FOLDER.glob("*.txt"))] == [file.stem for file in FILES]


def test_every_source_code_is_shown_by_some_file() -> None:
    shown = {line.split()[1] for file in FOLDER.glob("*.txt") for line in _headings(file)}
    assert shown == {code for code in CODES if code.startswith("S")} - TOO_LARGE_TO_KEEP


def _headings(file: Path) -> list[str]:
    return [line for line in file.read_text(encoding="utf-8").split("\n") if line.startswith("Fault ")]

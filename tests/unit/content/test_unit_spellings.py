"""Questions take the units of their answers in any spelling that benches and figures take."""

from __future__ import annotations

import pytest

from journeybook.content.file_read import read_file
from journeybook.content.formats.questions import BANK, BankFile
from journeybook.content.model import NumberQuestion

ASKED = """
title: "Flow"
questions:
  - id: flow-01
    kind: number
    use: practice
    outcome: flow
    level: apply
    source: kit
    ask: "How much?"
    right: "10"
    tolerance: "1"
    unit: "{unit}"
    units: ["{other}"]
"""


def read(unit: str, other: str) -> NumberQuestion:
    text = ASKED.format(unit=unit, other=other)
    file = read_file(text.encode(), "quizzes/a/flow.yml", BANK, {"question": {"bank": "flow"}})
    assert isinstance(file.value, BankFile), file.problems
    (question,) = file.value.questions
    assert isinstance(question, NumberQuestion)
    return question


@pytest.mark.parametrize(
    ("written", "symbol"), [("m³/h", "m3/h"), ("l/min", "L/min"), ("µm", "um"), ("m3/h", "m3/h")]
)
def test_a_spelling_of_the_table_is_read_as_its_symbol(written: str, symbol: str) -> None:
    assert read(written, written).unit == symbol
    assert read("mm", written).units == (symbol,)


def test_a_unit_that_the_table_does_not_have_stays_as_it_is_written_to_be_told() -> None:
    assert read("furlong", "mm").unit == "furlong"

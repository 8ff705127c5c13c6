"""An example in a message can be copied as it stands."""

from __future__ import annotations

import pytest

from journeybook.content.formats.fan_bench import FAN
from journeybook.source.examples import clause, written


@pytest.mark.parametrize(
    ("example", "shown"),
    [
        ("36", '"36"'),
        ("0.4", '"0.4"'),
        ("L/min", '"L/min"'),
        ("jam", "jam"),
        ("before-use", "before-use"),
        (6, "6"),
    ],
)
def test_a_text_that_would_be_read_as_a_number_stands_in_quotes(example: object, shown: str) -> None:
    assert written(example) == shown


def test_no_unit_loses_its_capital_in_a_message() -> None:
    for field in FAN.fields:
        assert clause(field.describe).split()[0] not in ("pa", "w", "wh")

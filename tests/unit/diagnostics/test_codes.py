from __future__ import annotations

import re

import pytest

from journeybook.diagnostics import codes, codes_of_records
from journeybook.diagnostics.codes import CODES, STAGES, fault, warning
from journeybook.diagnostics.problem import Level, Place, Problem

PLACE = Place(file="a.yml", line=2, column=3)


def test_a_code_is_the_letter_of_a_stage_and_three_digits() -> None:
    assert [code for code in CODES if not re.fullmatch(f"[{''.join(STAGES)}][0-9]{{3}}", code)] == []


def test_a_title_is_one_sentence() -> None:
    assert [title for title in CODES.values() if not re.fullmatch(r"[A-Z][^\n]*\.", title)] == []


def test_no_code_stands_in_two_sections_of_the_table() -> None:
    sections = [
        value
        for module in (codes, codes_of_records)
        for name, value in vars(module).items()
        if name.startswith("_") and isinstance(value, dict)
    ]
    listed = [code for section in sections for code in section if isinstance(code, str) and code in CODES]
    assert sorted(listed) == sorted(CODES)


def test_a_fault_carries_what_it_was_given() -> None:
    other = Place(file="a.yml")
    assert fault("S010", PLACE, "Twice.", "Delete one.", [other]) == Problem(
        code="S010", level=Level.FAULT, place=PLACE, message="Twice.", mend="Delete one.", also_at=(other,)
    )


def test_a_warning_is_one() -> None:
    assert warning("S010", PLACE, "Twice.", "Delete one.").level is Level.WARNING


@pytest.mark.parametrize("constructor", [fault, warning])
def test_a_code_that_is_not_registered_is_a_slip_of_the_programmer(constructor: type[Problem]) -> None:
    with pytest.raises(KeyError, match="S999"):
        constructor("S999", PLACE, "x", "y")  # type: ignore[call-arg, misc]

"""A code on paper is black on white with its quiet zone, and never larger than a camera can read."""

from __future__ import annotations

import re
import sys

import pytest

from journeybook.diagnostics.extras import to_install
from journeybook.paper.code_picture import NoCodePicture, code_picture
from journeybook.paper.press import NoPress


def test_a_short_text_makes_a_small_code_with_four_empty_modules_around() -> None:
    picture = code_picture("JB1:ABC")
    assert picture.modules == 21 + 2 * 4
    assert b'width="29" height="29"' in picture.svg
    assert re.findall(rb'(?:fill|stroke)="(#\w+)"', picture.svg) == [b"#fff", b"#000"]
    # The first row of squares begins below and right of the quiet zone.
    assert b'd="M4 4.5' in picture.svg


def test_the_longest_code_of_a_certificate_is_version_18() -> None:
    # ISO/IEC 18004, table 7: version 18 holds 816 alphanumeric signs at level M.
    assert code_picture("A" * 800).modules == 17 + 4 * 18 + 2 * 4
    assert code_picture("A" * 816).modules == 97


@pytest.mark.parametrize("length", [817, 9000])
def test_a_longer_text_is_refused(length: int) -> None:
    with pytest.raises(NoCodePicture) as refused:
        code_picture("A" * length)
    assert str(refused.value) == (
        f"The record has {length} signs, too many for a code of version 18 that a camera reads from paper: "
        "shorten its texts."
    )


@pytest.mark.parametrize("text", ["", "lower case", "JB1:Ä"])
def test_other_signs_than_those_of_the_dense_mode_are_refused(text: str) -> None:
    with pytest.raises(NoCodePicture, match=r"capitals, digits and the signs \$ % \* \+ - \. / : only\.$"):
        code_picture(text)


def test_without_the_package_that_draws_it_says_how_to_install_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "segno", None)
    with pytest.raises(NoPress, match=re.escape(f"Codes on paper need segno: {to_install('print')}.")):
        code_picture("JB1:ABC")

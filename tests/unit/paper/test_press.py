"""The press: same input, same bytes; data are never commands; a character without a shape prints as a mark."""

from __future__ import annotations

import re
import sys
from datetime import UTC, datetime, timedelta, timezone
from io import BytesIO

import pikepdf
import pypdfium2
import pytest

from journeybook.diagnostics.extras import to_install
from journeybook.paper import press as press_module
from journeybook.paper.press import UNSHOWN, Attachment, NoPress, NotSet, press, unprintable

MADE = datetime(2026, 11, 28, 9, 30, tzinfo=UTC)
PLAIN = b"""#import "look.typ": *
#let data = json("data.json")
#show: paper-sheet.with(title: "A test")
= A test
#data.text
"""


@pytest.fixture(autouse=True)
def plain_sheet(monkeypatch: pytest.MonkeyPatch) -> None:
    """One more template, which prints one text."""
    sheets = press_module._templates() | {"plain.typ": PLAIN, "broken.typ": b"#nothing-of-this-name"}
    monkeypatch.setattr(press_module, "_templates", lambda: sheets)


def printed(pdf: bytes) -> str:
    return "".join(page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(pdf))


def test_the_same_input_gives_the_same_bytes_whatever_the_time_zone() -> None:
    here = MADE.astimezone(timezone(timedelta(hours=-7)))
    assert press("plain", {"text": "x"}, made=MADE) == press("plain", {"text": "x"}, made=here)
    assert press("plain", {"text": "x"}, made=MADE) != press("plain", {"text": "y"}, made=MADE)


@pytest.mark.parametrize(
    "text",
    [
        "#sys.version",
        '#panic("x")',
        "*strong* _slanted_ `code` $x^2$ @nobody <label>",
        '"quoted" \\n \\u{41} // no comment',
        "= no heading - no list + no list / no term: x",
        '#include "/etc/passwd"',
    ],
)
def test_a_text_is_printed_as_it_is_and_never_run(text: str) -> None:
    assert text in printed(press("plain", {"text": text}, made=MADE)).replace("\r\n", " ")


def test_a_character_that_no_face_has_prints_as_a_mark() -> None:
    said = printed(press("plain", {"text": "Li 李小龍 and 😀, Łukasz, Иван, Ελένη"}, made=MADE))
    assert f"Li {UNSHOWN * 3} and {UNSHOWN}, Łukasz, Иван, Ελένη" in said


def test_a_name_cannot_turn_the_writing_round() -> None:
    assert f"A{UNSHOWN}B{UNSHOWN}C" in printed(press("plain", {"text": "A\u202eB\u202dC"}, made=MADE))


def test_an_attachment_keeps_its_bytes_its_name_and_what_it_is() -> None:
    attachment = Attachment(
        name="a.json", data=b'{"\xc3\xa9":1}\n', kind="application/json", says='The "data" \\ x'
    )
    with pikepdf.open(BytesIO(press("plain", {"text": "x"}, made=MADE, attachment=attachment))) as pdf:
        specification = pdf.attachments["a.json"]
        assert specification.get_file().read_bytes() == attachment.data
        assert specification.get_file().mime_type == "application/json"
        assert specification.description == 'The "data" \\ x'


def test_a_template_that_cannot_be_set_says_so_in_a_sentence() -> None:
    with pytest.raises(NotSet, match=r"^The paper “broken” could not be set: .*unknown variable"):
        press("broken", {}, made=MADE)


def test_without_the_typesetter_it_says_how_to_install_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    with pytest.raises(NoPress, match=re.escape(f"Papers need the typesetter: {to_install('print')}.")):
        press("plain", {"text": "x"}, made=MADE)


@pytest.mark.parametrize(
    ("text", "lacking"),
    [
        ("Robin Ashdown", ""),
        ("Ærøskøbing-Łukasz Nguyễn Нина", ""),
        ("李娜, Ann", "李娜"),
        ("A\u0301nn 😀", "😀"),
    ],
)
def test_the_characters_that_no_face_has_are_told_beforehand(text: str, lacking: str) -> None:
    assert unprintable(text, MADE) == frozenset(lacking)
    shown = printed(press("plain", {"text": text}, made=MADE))
    assert (UNSHOWN in shown) == bool(lacking)

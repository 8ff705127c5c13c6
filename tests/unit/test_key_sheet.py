"""The sheet of a key as PDF: what a camera reads off the print, and what a hand types from it, opens the key again."""

from __future__ import annotations

import os
import re
import stat
import sys
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path

import pdfua
import pikepdf
import pypdfium2
import pytest
import zxingcpp
from click.testing import CliRunner, Result

from journeybook.cli import main
from journeybook.diagnostics.extras import to_install
from journeybook.paper.key_paper import KeyOnPaper, key_pdf
from journeybook.paper.press import SIZES
from journeybook.proof.key_file import open_key
from journeybook.proof.key_paper import code_of, der_of, rows_of

Run = Callable[..., Result]
WORDS = "anvil lamp river stone gate oak"
HOLDER = 'T. Märrable #panic("x") $'


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Run]:
    """Runs a command in a folder that has the key k.pem; ``words`` is read as its passphrase."""
    monkeypatch.chdir(tmp_path)
    # How hard a passphrase is to guess is not what is tried here.
    monkeypatch.setattr("journeybook.proof.key_file.COST", 2**6)
    opened: list[int] = []

    def invoke(*arguments: str, words: str = "") -> Result:
        more: list[str] = []
        if words:
            reading, writing = os.pipe()
            os.write(writing, words.encode() + b"\n")
            os.close(writing)
            opened.append(reading)
            more = ["--passphrase-fd", str(reading)]
        return CliRunner().invoke(main, [*arguments, *more], catch_exceptions=False)

    made = invoke(
        "key", "make", "k.pem", "--holder", HOLDER, "--role", "training lead", "--demo", words=WORDS
    )
    assert made.exit_code == 0, made.output
    yield invoke
    for each in opened:
        os.close(each)


@pytest.fixture
def sheet(run: Run) -> bytes:
    made = run("key", "paper", "k.pem", "k.pdf")
    assert made.exit_code == 0, made.output
    return Path("k.pdf").read_bytes()


def _text(pdf: bytes) -> str:
    (page,) = pypdfium2.PdfDocument(pdf)
    return str(page.get_textpage().get_text_bounded())


def _opens_like(name: str) -> bool:
    before, after = (open_key(Path(path), WORDS).private_bytes_raw() for path in ("k.pem", name))
    return before == after


def test_a_camera_reads_the_key_off_the_print_at_150_dots_an_inch(run: Run, sheet: bytes) -> None:
    print_out = pypdfium2.PdfDocument(sheet)[0].render(scale=150 / 72).to_pil().convert("1").convert("L")
    [code] = zxingcpp.read_barcodes(print_out)
    Path("paper.txt").write_text(code.text, encoding="utf-8")
    back = run("key", "restore", "paper.txt", "back.pem", words=WORDS)
    assert back.exit_code == 0, back.output
    assert _opens_like("back.pem")


def test_the_rows_as_they_stand_on_the_sheet_bring_the_key_back(run: Run, sheet: bytes) -> None:
    rows = re.findall(r"\b\d (?:[A-Z2-7]{1,4} )+/ [A-Z2-7]{2}", " ".join(_text(sheet).split()))
    assert len(rows) == len(rows_of(der_of(Path("k.pem").read_text())))
    Path("paper.txt").write_text("\n".join(rows).lower(), encoding="utf-8")
    days = re.search(r"Signs from\s+([0-9-]+)\s+until\s+([0-9-]+)", _text(sheet))
    assert days is not None
    back = run(
        "key", "restore", "paper.txt", "back.pem", "--demo", "--holder", HOLDER, "--role", "training lead",
        "--from", days[1], "--until", days[2], words=WORDS,
    )  # fmt: skip
    assert back.exit_code == 0, back.output
    assert _opens_like("back.pem")


def test_the_sheet_says_whose_key_it_is_and_never_its_passphrase(run: Run, sheet: bytes) -> None:
    text = " ".join(_text(sheet).split())
    assert HOLDER in text
    assert "DEMO KEY: not for certificates that anybody is to rely on." in text
    shown = run("key", "show", "k.pem").output.splitlines()[-1].removeprefix("Fingerprint ").strip()
    assert shown in text
    assert not any(word in text for word in WORDS.split() if len(word) > 3)


def test_only_the_signer_reads_the_file_and_it_is_never_written_over(run: Run, sheet: bytes) -> None:
    assert stat.S_IMODE(Path("k.pdf").stat().st_mode) == 0o600
    again = run("key", "paper", "k.pem", "k.pdf")
    assert again.exit_code == 1
    assert "k.pdf is there already" in again.output
    assert Path("k.pdf").read_bytes() == sheet


def test_the_sheet_is_made_to_be_read_aloud(sheet: bytes) -> None:
    with pikepdf.open(BytesIO(sheet)) as opened:
        meta = opened.open_metadata()
        assert (meta["pdfaid:part"], meta["pdfaid:conformance"], meta["pdfuaid:part"]) == ("3", "A", "1")
        assert meta["dc:title"] == f"Key for the safe: {HOLDER}"
    assert pdfua.validate("k.pdf").findings == ()


@pytest.mark.parametrize("paper", SIZES)
@pytest.mark.usefixtures("run")
def test_the_longest_names_keep_to_one_page(paper: str) -> None:
    file = Path("k.pem").read_text(encoding="utf-8")
    longest = KeyOnPaper(
        holder="Wolkenstein-" * 10,
        role="training lead of the yard by the slip " * 3,
        from_day="2026-11-27",
        until="2027-01-31",
        demo=True,
        did="did:key:z6MkpTHR8VNsBxYAAWHut2Geadd9jSwuBV8xRoAnwWsdvktH",
        fingerprint="ABCD " * 8,
        rows=rows_of(der_of(file)),
        code=code_of(file),
        printed="2026-11-27",
    )
    made = datetime(2026, 11, 27, tzinfo=UTC)
    pdf = key_pdf(longest, made=made, paper=paper)
    assert "Last tried" in _text(pdf)
    assert pdf == key_pdf(longest, made=made, paper=paper)


def test_without_the_typesetter_a_sentence_says_what_to_do(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    said = run("key", "paper", "k.pem", "k.pdf")
    assert said.exit_code == 1
    assert (
        f"Papers need the typesetter: {to_install('print')}. "
        "Or name a file that ends in .html, and print that."
    ) in said.output
    assert not Path("k.pdf").exists()
    assert run("key", "paper", "k.pem", "k.html").exit_code == 0

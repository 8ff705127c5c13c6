"""The record is found in its PDF, whatever else stands there, and nothing in a PDF keeps the search long."""

from __future__ import annotations

import io
import time
import zlib

import pikepdf
import pytest

from journeybook.proof.record_in_pdf import PDF_CAP, STREAMS_CAP, find, is_pdf

RECORD = b'{"@context":[],"name":"Ines Okafor","proof":{"cryptosuite":"eddsa-jcs-2022"}}'
OTHER = RECORD.replace(b"Ines", b"Anes")
PAGE = zlib.compress(b"BT (text of a page) Tj ET")


def pdf(*streams: bytes, line: bytes = b"\r\n") -> bytes:
    """What a reader that only looks for streams takes for a PDF."""
    return b"%PDF-1.7\n" + b"".join(
        b"1 0 obj\n<< >>\nstream" + line + each + b"\nendstream\nendobj\n" for each in streams
    )


@pytest.mark.parametrize("line", [b"\r\n", b"\n"])
@pytest.mark.parametrize(
    "stream", [RECORD, zlib.compress(RECORD), zlib.compress(RECORD, 0), zlib.compress(RECORD, 9)]
)
def test_the_record_is_found_among_other_streams(stream: bytes, line: bytes) -> None:
    swollen = zlib.compress(bytes(1 << 20))
    assert find(pdf(PAGE, swollen, stream, PAGE, b"", b"x", line=line)) == RECORD


def test_the_record_is_found_in_a_pdf_that_a_library_wrote_and_another_wrote_again() -> None:
    written = io.BytesIO()
    with pikepdf.new() as made:
        made.add_blank_page()
        made.attachments["record.json"] = pikepdf.AttachedFileSpec(made, RECORD, mime_type="application/vc")
        made.save(written)
    assert find(written.getvalue()) == RECORD
    again = io.BytesIO()
    with pikepdf.open(written) as opened:
        opened.save(
            again,
            object_stream_mode=pikepdf.ObjectStreamMode.generate,
            recompress_flate=True,
            compress_streams=True,
        )
    assert find(again.getvalue()) == RECORD


@pytest.mark.parametrize(
    "title", [b"(upstream)", b"(stream\n)", b"(a stream\r\nx\x9c and so on)", b"/endstream\n", b"(stream\n{)"]
)
def test_the_word_in_a_title_hides_no_stream_behind_it(title: bytes) -> None:
    head = b"%PDF-1.7\n1 0 obj\n<< /Title " + title + b" >>\nendobj\n"
    for stream in (RECORD, zlib.compress(RECORD)):
        assert find(head + pdf(stream).removeprefix(b"%PDF-1.7\n")) == RECORD
    two = pdf(RECORD, OTHER).removeprefix(b"%PDF-1.7\n")
    assert find(head + two) is None


def test_the_same_record_twice_is_one() -> None:
    assert find(pdf(zlib.compress(RECORD), RECORD)) == RECORD


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"%PDF-",
        RECORD,
        pdf(),
        pdf(PAGE),
        pdf(zlib.compress(b"{}")),
        pdf(zlib.compress(b" " + RECORD)),
        pdf(zlib.compress(RECORD)[:-20]),
        pdf(zlib.compress(RECORD), zlib.compress(OTHER)),
        pdf(zlib.compress(b'{"@context":"eddsa-jcs-2022"' + b" " * 16_384)),
        pdf(b'{"@context":"eddsa-jcs-2022"' + b" " * 16_384),
        pdf(zlib.compress(RECORD))[:-30],
        b" " * 1024 + pdf(RECORD),
    ],
    ids=[
        "nothing", "its first word", "the record alone", "no stream", "a page alone", "another record", "not at once",
        "cut", "two records", "swollen", "too long", "cut short", "begins too late",
    ],
)  # fmt: skip
def test_what_holds_no_record_gives_none(data: bytes) -> None:
    assert find(data) is None


def test_a_pdf_may_begin_after_what_a_server_put_before_it() -> None:
    assert is_pdf(b"\n" * 1019 + b"%PDF-1.7")
    assert not is_pdf(b"\n" * 1020 + b"%PDF-1.7")


def filled(piece: bytes) -> bytes:
    whole = b"%PDF-1.7\n" + piece * ((PDF_CAP - 9) // len(piece))
    return whole[:PDF_CAP]


@pytest.mark.parametrize(
    "data",
    [
        filled(b"stream"),
        filled(b"endstrea"),
        filled(b"streamendstream"),
        filled(b"stream\n{endstream"),
        filled(b"stream\nx\x9cendstream"),
        filled(b"stream\n" + zlib.compress(bytes(1 << 23)) + b"\nendstream"),
        filled(
            b"stream\n" + zlib.compress(b'{"@context":"eddsa-jcs-2022"' + b" " * 16_000)[:-5] + b"\nendstream"
        ),
        filled(b"stream\n"),
        filled(b"stream\r\n"),
        filled(b"endstream\n"),
        filled(b"stream\nendstream\n"),
        filled(b"s"),
        b"%PDF-1.7\nstream\nx\x9c" + bytes(PDF_CAP - 40) + b"endstream",
    ],
    ids=[
        "stream",
        "endstrea",
        "empty streams",
        "braces",
        "zlib heads",
        "bombs",
        "cut records",
        "stream a line",
        "stream a long line",
        "endstream a line",
        "empty streams a line",
        "s",
        "one",
    ],
)
def test_a_hostile_pdf_is_done_with_in_a_second(data: bytes) -> None:
    began = time.process_time()
    assert find(data) is None
    assert time.process_time() - began < 1


def test_more_streams_than_a_certificate_has_are_not_opened() -> None:
    assert find(pdf(*[PAGE] * (STREAMS_CAP - 1), RECORD)) == RECORD
    assert find(pdf(*[PAGE] * STREAMS_CAP, RECORD)) is None


def test_a_larger_file_is_not_looked_at() -> None:
    assert find(pdf(RECORD) + bytes(PDF_CAP)) is None

"""The certificate that is attached to its PDF, found without reading the PDF as one.

Every stream is opened, and the one that is a certificate is taken; so a broken table of contents, or a PDF that
another program has written anew, loses nothing. Time grows with the size of the file, whatever it holds.
Twin of ``site_overrides/js/pure/record-in-pdf.js``.
"""

from __future__ import annotations

import re
import zlib

from journeybook.proof.certificate import SIZE_CAP

PDF_CAP = 20 << 20
"""Bytes."""
STREAMS_CAP = 2000
"""A certificate of ours has a few dozen."""
_WORDS_CAP = 2 * STREAMS_CAP
_WINDOW = 2 * SIZE_CAP
"""Bytes of a stream that are opened: deflating makes nothing twice as long."""
_BEGIN = b'{"@context":'
"""Of a certificate in its one form (RFC 8785): no member sorts before this."""
_MARK = b'"eddsa-jcs-2022"'
_WORD = re.compile(rb"stream[\r\n]")
"""ISO 32000-2, 7.3.8.1: the word is followed by a line's end. A title may hold it too."""
_END = b"endstream"


def is_pdf(data: bytes) -> bool:
    """Return whether the first kilobyte says that it is a PDF (as readers of PDF look for it)."""
    return data.find(b"%PDF-", 0, 1024) >= 0


def find(pdf: bytes) -> bytes | None:
    """Return the bytes of the one record in a PDF; None where there is none, or more than one that differ."""
    if len(pdf) > PDF_CAP or not is_pdf(pdf):
        return None
    found: bytes | None = None
    after = streams = 0
    end = -1
    for _ in range(_WORDS_CAP):
        word = _WORD.search(pdf, after)
        if word is None or streams >= STREAMS_CAP:
            break
        after = word.end()
        start = after + pdf.startswith(b"\r\n", after - 1)
        if pdf.startswith(b"end", word.start() - 3):
            continue
        if end < start:
            end = pdf.find(_END, start)
        if end < 0:
            break
        streams += 1
        record = _opened(pdf[start : min(end, start + _WINDOW)])
        if record is None:
            continue  # Perhaps the word stood in a text, and the stream begins further on.
        after = end + len(_END)
        if not record.startswith(_BEGIN) or _MARK not in record:
            continue
        if found is not None and found != record:
            return None
        found = record
    return found


def _opened(stream: bytes) -> bytes | None:
    """A stream as it stands, or inflated (zlib, RFC 1950); None where it is neither or too large."""
    if stream.startswith(_BEGIN):
        plain = stream[: SIZE_CAP + 2].rstrip(b"\r\n")
        return plain if len(plain) <= SIZE_CAP else None
    # RFC 1950, 2.2: method 8, and the first two bytes are a multiple of 31.
    if len(stream) < 2 or stream[0] & 15 != 8 or int.from_bytes(stream[:2], "big") % 31:
        return None
    machine = zlib.decompressobj(-zlib.MAX_WBITS)
    try:
        record = machine.decompress(memoryview(stream)[2:], SIZE_CAP + 1)
    except zlib.error:
        return None
    return record if machine.eof and len(record) <= SIZE_CAP else None

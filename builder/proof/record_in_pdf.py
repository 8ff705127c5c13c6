"""The certificate that is attached to its PDF, found without reading the PDF as one.

Every stream is opened, and the one that is a certificate is taken; so a broken table of contents, or a PDF that
another program has written anew, loses nothing. Time grows with the size of the file, whatever it holds.
Twin of ``site_overrides/js/pure/record-in-pdf.js``.
"""

from __future__ import annotations

import zlib

from journeybook.proof.certificate import SIZE_CAP

PDF_CAP = 20 << 20
"""Bytes."""
STREAMS_CAP = 2000
"""A certificate of ours has a few dozen."""
_MARK = b'"eddsa-jcs-2022"'
_WORD = b"stream"
_END = b"endstream"


def is_pdf(data: bytes) -> bool:
    """Return whether the first kilobyte says that it is a PDF (as readers of PDF look for it)."""
    return data.find(b"%PDF-", 0, 1024) >= 0


def find(pdf: bytes) -> bytes | None:
    """Return the bytes of the one record in a PDF; None where there is none, or more than one that differ."""
    if len(pdf) > PDF_CAP or not is_pdf(pdf):
        return None
    found: bytes | None = None
    after = 0
    for _ in range(STREAMS_CAP):
        word = pdf.find(_WORD, after)
        if word < 0:
            break
        start = word + len(_WORD)
        if pdf.startswith(b"\r", start):
            start += 1
        if pdf.startswith(b"\n", start):
            start += 1
        end = pdf.find(_END, start)
        if end < 0:
            break
        after = end + len(_END)
        record = _opened(pdf[start:end])
        if record is None or not record.startswith(b"{") or _MARK not in record:
            continue
        if found is not None and found != record:
            return None
        found = record
    return found


def _opened(stream: bytes) -> bytes | None:
    """A stream as it stands, or inflated (zlib, RFC 1950); None where it is neither or too large."""
    if stream.startswith(b"{"):
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

"""What somebody hands over as a certificate: its PDF, its record, or the code on paper as text."""

from __future__ import annotations

from journeybook.proof.certificate_code import LONGEST_READ, NoCode, begins, from_code
from journeybook.proof.record_in_pdf import find, is_pdf

_LONGEST_TEXT = 16 * LONGEST_READ
"""Bytes of a file that may be a code: with line breaks and blanks, and in any encoding, it is far below."""


def record_in(data: bytes) -> bytes:
    """Return the bytes of the record that ``data`` is, holds or stands for; empty where a PDF or a code gives none.

    What is neither a PDF nor a code is the record itself, good or not: the verdict says which.
    """
    if is_pdf(data):
        return find(data) or b""
    if len(data) <= _LONGEST_TEXT:
        text = data.decode("utf-8", "replace")
        if begins(text):
            try:
                return from_code(text)
            except NoCode:
                return b""
    return data

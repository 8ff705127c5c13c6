"""A certificate as the signs of its QR code: ``JB1:``, then base45 (RFC 9285) of the packed certificate.

Twin of ``site_overrides/js/pure/certificate-code.js``.
"""

from __future__ import annotations

import re

from journeybook.proof import base45
from journeybook.proof.certificate_pack import pack, unpack
from journeybook.proof.certificate_shape import AROUND

PREFIX = "JB1:"
LONGEST = 800
"""Signs that are written: a QR code of version 18 at level M holds them."""
LONGEST_READ = 4000
"""Signs that are read."""
_BROKEN = re.compile(r"[\r\n\t]+(?:>+ ?)*")
"""A line break, and the marks with which a mail quotes the line after it."""
_QUOTES = AROUND + ">\"'\u201c\u201d\u201e\u00ab\u00bb\u2018\u2019"
"""What stands around a quoted code; none of it is a sign of base45."""


class NoCode(ValueError):  # noqa: N818 - it says what the text is not
    """A text that is no code of a certificate, or one that is damaged."""

    def __init__(self, detail: str) -> None:
        """Keep why: ``detail`` is a sentence for people."""
        self.detail = detail
        super().__init__(detail)


def begins(text: str) -> bool:
    """Return whether a text begins as a code does, after what a pasting may have put around it."""
    return _bare(text)[: len(PREFIX)].upper() == PREFIX


def _bare(text: str) -> str:
    return text.lstrip(_QUOTES + "(<").rstrip(_QUOTES + ")")


def to_code(record: bytes) -> str:
    """Return the code of a certificate's bytes.

    Raises ValueError for what is no certificate, and where the code would be longer than ``LONGEST`` signs.
    """
    code = PREFIX + base45.encode(pack(record))
    if len(code) > LONGEST:
        raise ValueError(
            f"The code of this certificate would have {len(code)} signs, and at most {LONGEST} can be scanned: "
            "its texts are too long."
        )
    return code


def from_code(text: str) -> bytes:
    """Return the bytes of the certificate; raise NoCode.

    Line breaks, tabs and a mail's marks of quoting are left out, for it may have broken the code; a space is a sign of
    base45 and stays, but not around the code: none that we write ends in one.
    """
    code = _BROKEN.sub("", _bare(text))
    if not begins(code) or len(code) > LONGEST_READ:
        raise NoCode("This is not the code of a certificate.")
    try:
        return unpack(base45.decode(code[len(PREFIX) :]))
    except ValueError as error:
        raise NoCode("The code is damaged or cut short.") from error

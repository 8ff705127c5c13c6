"""Draws a code for paper: a QR code (ISO/IEC 18004) as SVG, black on white with its quiet zone.

The sheet decides how large it prints; ``modules`` tells how many squares a side has to hold.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from io import BytesIO

from journeybook.diagnostics.extras import to_install
from journeybook.paper.press import NoPress

QUIET = 4
"""Empty modules on each side (ISO/IEC 18004, 9.1)."""
MOST_VERSION = 18
"""Larger codes have squares too many for a camera at arm's length."""
_SIGNS = re.compile(r"[0-9A-Z $%*+\-./:]+")
"""The alphanumeric mode's (ISO/IEC 18004, 7.4.4)."""


class NoCodePicture(ValueError):  # noqa: N818 - what there is not
    """A text that no code of ours can hold; the text of the error says why, for people."""


@dataclass(frozen=True, kw_only=True)
class CodePicture:
    """A drawn code."""

    svg: bytes
    modules: int
    """Squares on a side, quiet zone and all."""


def code_picture(text: str) -> CodePicture:
    """Return the code that reads ``text``, at error correction level M.

    Raises NoCodePicture where the text has other signs than the alphanumeric mode or is too long, and NoPress where
    the package that draws is not installed.
    """
    try:
        import segno
    except ModuleNotFoundError as missing:
        raise NoPress(f"Codes on paper need segno: {to_install('print')}.") from missing
    if not _SIGNS.fullmatch(text):
        raise NoCodePicture("A code on paper holds capitals, digits and the signs $ % * + - . / : only.")
    try:
        code = segno.make(text, error="m", mode="alphanumeric", boost_error=False, micro=False)
    except segno.DataOverflowError as error:
        raise _too_long(text) from error
    if int(code.version) > MOST_VERSION:
        raise _too_long(text)
    out = BytesIO()
    code.save(
        out, kind="svg", border=QUIET, dark="#000", light="#fff", xmldecl=False, svgclass=None, lineclass=None
    )
    return CodePicture(svg=out.getvalue(), modules=int(code.symbol_size(border=QUIET)[0]))


def _too_long(text: str) -> NoCodePicture:
    return NoCodePicture(
        f"The record has {len(text)} signs, too many for a code of version {MOST_VERSION} that a camera reads from "
        "paper: shorten its texts."
    )

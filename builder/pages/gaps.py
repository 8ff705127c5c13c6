"""Documents with gaps: rendered once, cut at the gaps, filled many times, as bytes.

Where hundreds of pages differ in a title and a body only, rendering the rest again for each is most of the work.
"""

from __future__ import annotations

import os
import re
from collections.abc import Mapping

_OPEN, _CLOSE = f"\ue010{os.urandom(8).hex()}-", "\ue011"
"""Round a gap's name: what autoescaping leaves as it is, and no author can have written."""
_GAP = re.compile(f"{_OPEN}([a-z0-9-]+){_CLOSE}")


def gap(name: str) -> str:
    """What stands in a template's value where something is filled in later."""
    return f"{_OPEN}{name}{_CLOSE}"


class Cut:
    """A rendered document, cut at its gaps."""

    def __init__(self, document: str) -> None:
        pieces = _GAP.split(document)
        self._between = [piece.encode() for piece in pieces[::2]]
        self._names = pieces[1::2]

    def filled(self, contents: Mapping[str, bytes]) -> bytes:
        """The document with finished HTML in each gap. Raises KeyError for a gap that ``contents`` does not name."""
        written = [self._between[0]]
        for name, piece in zip(self._names, self._between[1:], strict=True):
            written += (contents[name], piece)
        return b"".join(written)

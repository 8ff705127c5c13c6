"""Whether the lettering of a drawing can be read on a phone.

The page scales a drawing to the width of the screen, and its lettering with it: the wider the ``viewBox``, the
smaller the letters. The theme gives each class of lettering its size in units of the drawing.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, field

from journeybook.diagnostics.codes import warning
from journeybook.diagnostics.problem import Place, Problem

SIZES = {"small": 13, "label": 15, "label-strong": 15, "number": 20}
"""Class -> height of the lettering in units of the drawing, as in ``css/figure.css``."""
SCREEN = 382
"""Pixels that a drawing gets on a phone 390 wide, which leaves 4 free on either side."""
LEAST = 12
"""Pixels that lettering has to be high."""


@dataclass(kw_only=True)
class Lettering:
    """The classes of lettering of one drawing, and how wide it is."""

    width: float = 0.0
    """Of the ``viewBox``; 0 where it has none."""
    place: Place | None = None
    """Where the ``viewBox`` stands."""
    _sizes: set[int] = field(default_factory=set)

    def note(self, classes: str) -> None:
        """A text has these classes, apart by spaces."""
        self._sizes.update(SIZES[name] for name in classes.split() if name in SIZES)

    def problems(self) -> Iterator[Problem]:
        """What is too small. A ``transform`` that makes a text larger is not looked at."""
        if not self._sizes or self.place is None or not self.width:
            return
        smallest = min(self._sizes)
        high = smallest * SCREEN / self.width
        if high < LEAST:
            widest = math.floor(smallest * SCREEN / LEAST / 10) * 10
            yield warning(
                "F009",
                self.place,
                f"On a phone the smallest lettering of this drawing is {high:.0f} pixels high; "
                f"at least {LEAST} can be read.",
                f"Put the parts closer together, on a `viewBox` {widest} wide at most, or below one another.",
            )

"""How likely somebody who takes every deed by chance is to end a drill well: exactly, as fractions.

With no way back, the chance at a moment is the mean of the chances where its deeds lead.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from journeybook.marking.kind import WEIGHT, Key


@dataclass(frozen=True, kw_only=True)
class Chances:
    """Of somebody who guesses."""

    full: Fraction
    """Of full marks."""
    critical: Fraction
    """Of a critical error."""
    mean: Fraction
    """The mark to be expected, 0 to 1000."""


def chances(key: Key) -> Chances:
    """The chances in the drill of a key. Its graph has no circle; ``content`` has made sure of it."""

    @cache
    def outlook(moment: str) -> Mapping[int | None, Fraction]:
        """Worth of the end less the penalties after ``moment`` (None: a critical error) to its chance."""
        if moment in key["ends"]:
            return {key["ends"][moment]: Fraction(1)}
        deeds: Mapping[str, Mapping[str, Any]] = key["moments"][moment]
        found: dict[int | None, Fraction] = defaultdict(Fraction)
        for deed in deeds.values():
            if "critical" in deed:
                found[None] += Fraction(1, len(deeds))
                continue
            for worth, chance in outlook(deed["to"]).items():
                found[None if worth is None else worth - deed["penalty"]] += chance / len(deeds)
        return found

    whole = outlook(key["start"])
    return Chances(
        full=whole.get(WEIGHT, Fraction(0)),
        critical=whole.get(None, Fraction(0)),
        mean=sum(
            (max(0, worth) * chance for worth, chance in whole.items() if worth is not None), Fraction(0)
        ),
    )

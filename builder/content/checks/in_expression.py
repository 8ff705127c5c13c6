"""Where something stands within an expression, and whether its absence can be told."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

from journeybook.content.arithmetic import Flaw
from journeybook.content.gathered import SheetsRead
from journeybook.diagnostics.problem import Place


def inside(place: Place, flaw: Flaw, text: str) -> Place:
    """The place of the flaw in the expression, where the whole of it stands on one line."""
    quote = place.length - len(text)
    if quote not in (0, 2) or flaw.column > len(text) + 1:
        return place
    return replace(place, column=place.column + quote // 2 + flaw.column - 1, length=1)


def at_name(place: Place, name: str, text: str) -> Place:
    """The place of a name in the expression, likewise."""
    found = re.search(rf"\b{re.escape(name)}\b", text)
    if found is None:
        return place
    found_at = inside(place, Flaw(column=found.start() + 1, message="", mend=""), text)
    return place if found_at is place else replace(found_at, length=len(name))


def unsure_sheet(sheets: SheetsRead, names: Iterable[str]) -> bool:
    """True when a value is named whose sheet could not be read whole; then its absence proves nothing."""
    return any(dot and sheet in sheets.unread for sheet, dot, _ in (name.partition(".") for name in names))

"""Which kinds of question there are. A new kind is a file of its own and one line here."""

from __future__ import annotations

from journeybook.marking import choice, choices, drill, match, number, order, setting, spot, triage
from journeybook.marking.kind import Kind

KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        choice.KIND,
        choices.KIND,
        order.KIND,
        match.KIND,
        number.KIND,
        drill.KIND,
        spot.KIND,
        triage.KIND,
        setting.KIND,
    )
}
"""By the YAML word."""

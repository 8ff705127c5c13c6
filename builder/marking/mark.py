"""What an answer is worth."""

from __future__ import annotations

from journeybook.marking.kind import Key, Marked
from journeybook.marking.kinds import KINDS


def mark(key: Key, variant: int, answer: object) -> Marked:
    """Return mark (0 to 1000) and remarks for a raw answer; None is no answer.

    Never raises over an answer: one that no page of ours could have written earns 0 and is remarked as
    malformed. ``variant`` counts from 0 and must be one of the key's.
    """
    return KINDS[key["kind"]].mark(key, variant, answer)

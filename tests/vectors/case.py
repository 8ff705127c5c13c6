"""What a vector is: an operation, what it is given, and what must come out.

``hand(...)`` cases carry an expectation that was worked out on paper or comes from a published source; making
one fails where the Python disagrees. ``derived(...)`` cases freeze what Python gives today, so that neither
language drifts.
"""

from __future__ import annotations

from typing import Any

from operations import OPERATIONS

Case = dict[str, Any]


def hand(name: str, do: str, given: Case, expect: Any) -> Case:
    """Return a case whose expectation was reasoned out."""
    found = OPERATIONS[do](given)
    if found != expect:
        raise SystemExit(f"{name}\n  expected {expect}\n  found    {found}")
    return {"name": name, "do": do, "given": given, "expect": expect}


def derived(name: str, do: str, given: Case) -> Case:
    """Return a case that freezes what the code gives."""
    return {"name": name, "do": do, "given": given, "expect": OPERATIONS[do](given)}


def marked(name: str, key: Case, answer: Any, mark: int, variant: int = 0, **remarks: Any) -> Case:
    """Return a hand-reasoned case of marking."""
    expect = {"mark": mark, "remarks": {"kind": key["kind"], **remarks}}
    return hand(name, "mark", {"key": key, "variant": variant, "answer": answer}, expect)

"""What became of each person when certificates were issued: a table in words, or data for a program."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from journeybook.diagnostics.excerpt import visible

if TYPE_CHECKING:
    from journeybook.certifying_desk import Line
    from journeybook.proof.certificate import Certificate

_WIDTH = 16


def as_words(lines: Sequence[Line], *, demo: bool) -> str:
    """Return the table, a person a paragraph, and the sums."""
    rows = [row for line in lines for row in _rows(line)]
    counts = Counter(line.outcome for line in lines)
    sums = ", ".join(f"{count} {outcome}" for outcome, count in sorted(counts.items(), key=_order))
    tail = [f"In all: {sums or 'nobody'}."]
    if demo and counts["issued"]:
        tail.append("The key is for trying out: every certificate says EXAMPLE, not valid for work.")
    return "\n".join([*rows, *([""] if rows else []), *tail]) + "\n"


def _order(entry: tuple[str, int]) -> int:
    return ("issued", "already issued", "not issued").index(entry[0])


def _rows(line: Line) -> Iterator[str]:
    who = f"{visible(line.name)} ({visible(line.person)})"
    yield f"{line.outcome.capitalize():<{_WIDTH}}{who}" + (f", {visible(line.ticket)}" if line.ticket else "")
    below = " " * _WIDTH
    if line.file:
        yield below + visible(line.file)
    if line.certificate is not None:
        yield below + _strengths(line.certificate)
    mends: list[str] = []
    for reason in line.reasons:
        yield below + visible(reason.why)
        mends += [] if reason.mend in mends else [reason.mend]
    for mend in mends:
        yield f"{below}> {visible(mend)}"
    for note in line.notes:
        yield below + visible(note)


def _strengths(certificate: Certificate) -> str:
    practical = (
        "practical observed"
        if certificate.practical == "observed"
        else "practical not observed: knowledge check only"
    )
    return f"{certificate.check}; {practical}; retrain by {certificate.retrain_by}"


def as_data(lines: Sequence[Line]) -> str:
    """Return the same for a program."""
    content = [
        {
            "ticket": line.ticket,
            "id": line.person,
            "name": line.name,
            "outcome": line.outcome,
            "passed": line.passed,
            "certificate": line.id,
            "file": line.file,
            "check": line.certificate.check if line.certificate else "",
            "practical": line.certificate.practical if line.certificate else "",
            "retrain-by": line.certificate.retrain_by.isoformat() if line.certificate else "",
            "reasons": [{"why": each.why, "mend": each.mend} for each in line.reasons],
            "notes": list(line.notes),
        }
        for line in lines
    ]
    return json.dumps(content, ensure_ascii=False, indent=1) + "\n"

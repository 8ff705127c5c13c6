"""What became of each person when certificates were issued: a table in words, or data for a program."""

from __future__ import annotations

import json
import textwrap
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from journeybook.diagnostics.excerpt import visible

if TYPE_CHECKING:
    from journeybook.certifying_desk import Line
    from journeybook.proof.certificate import Certificate

_INDENT = " " * 16
_WIDTH = 100


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
    ticket = f", {visible(line.ticket)}" if line.ticket else ""
    yield f"{line.outcome.capitalize():<{len(_INDENT)}}{who}{ticket}"
    if line.file:
        yield _INDENT + visible(line.file)
    if line.certificate is not None:
        yield _INDENT + _strengths(line.certificate)
    for reason in line.reasons:
        yield _below(reason.why)
    for mend in dict.fromkeys(reason.mend for reason in line.reasons):
        yield _below(mend, "> ")
    for note in line.notes:
        yield _below(note)


def _below(text: str, mark: str = "") -> str:
    """A sentence below the name, broken where it is long; what is to be typed stays whole words."""
    return textwrap.fill(
        visible(text),
        _WIDTH,
        initial_indent=_INDENT + mark,
        subsequent_indent=_INDENT + " " * len(mark),
        break_long_words=False,
        break_on_hyphens=False,
    )


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

"""Writes the vectors that Python and JavaScript both run: ``python tests/vectors/make_vectors.py``."""

from __future__ import annotations

import json
from pathlib import Path

from byte_cases import canonical_bytes, records
from drawing_cases import forms, results, streams
from marking_cases import choosing, matching, ordering
from number_cases import numbers, typing

HERE = Path(__file__).parent

FILES = {
    "mark-choosing": choosing,
    "mark-ordering": ordering,
    "mark-matching": matching,
    "mark-numbers": numbers,
    "typed-numbers": typing,
    "streams": streams,
    "forms": forms,
    "results": results,
    "canonical": canonical_bytes,
    "records": records,
}


def contents(name: str) -> str:
    """Return what the file of that name holds."""
    build = FILES[name]
    cases = build()
    lines = ",\n".join(json.dumps(case, ensure_ascii=True) for case in cases)
    return f'{{"about": {json.dumps(build.__doc__)}, "cases": [\n{lines}\n]}}\n'


if __name__ == "__main__":
    for file in FILES:
        (HERE / f"{file}.json").write_text(contents(file), encoding="utf-8")

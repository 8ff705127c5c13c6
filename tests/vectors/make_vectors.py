"""Writes the vectors that Python and JavaScript both run: ``python tests/vectors/make_vectors.py``."""

from __future__ import annotations

import json
from pathlib import Path

from assembly_cases import assembling
from bench_cases import reading_off, setting
from by_hand_cases import pointing, sorting
from byte_cases import canonical_bytes, records
from calculator_cases import calculating
from code_cases import codes, sitting_texts
from drawing_cases import forms, results, streams
from drill_cases import drilled_checks, drilling
from marking_cases import choosing, matching, ordering
from number_cases import numbers, typing
from observed_cases import observing

HERE = Path(__file__).parent

FILES = {
    "mark-choosing": choosing,
    "mark-ordering": ordering,
    "mark-matching": matching,
    "mark-numbers": numbers,
    "mark-pointing": pointing,
    "mark-sorting": sorting,
    "mark-setting": setting,
    "mark-drills": drilling,
    "typed-numbers": typing,
    "streams": streams,
    "forms": forms,
    "results": results,
    "results-of-drills": drilled_checks,
    "canonical": canonical_bytes,
    "records": records,
    "observations": observing,
    "assembly": assembling,
    "calculator": calculating,
    "bench-table": reading_off,
    "record-codes": codes,
    "sitting-texts": sitting_texts,
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

"""The verdict on every case that the checking page is held to as well; the file of cases is what its script writes."""

from __future__ import annotations

import base64
import json
import os
import subprocess
import sys
from collections import Counter
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from journeybook.proof.certificate_code import NoCode, from_code
from journeybook.proof.trust_list import TrustList, read
from journeybook.proof.verdict import verdict

CASES_OF = Path(__file__).parents[2] / "vectors" / "proof"
TABLE: dict[str, Any] = json.loads((CASES_OF / "verdicts.json").read_text(encoding="utf-8"))
LISTS: dict[str, TrustList] = {name: read(text.encode("utf-8")) for name, text in TABLE["lists"].items()}


def record_of(case: dict[str, Any]) -> bytes:
    if "base64" in case:
        return base64.b64decode(case["base64"])
    if "record" in case:
        return str(case["record"]).encode("utf-8")
    text: str = TABLE["records"][case["of"]]
    for old, new in case["edits"]:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return text.encode("utf-8")


@pytest.mark.parametrize("case", [pytest.param(each, id=each["name"]) for each in TABLE["cases"]])
def test_verdict(case: dict[str, Any]) -> None:
    trust = None if case["trust"] is None else LISTS[case["trust"]]
    found = verdict(record_of(case), trust, date.fromisoformat(case["today"]))
    assert found.kind == case["kind"]
    assert (found.withdrawn and found.withdrawn.on) == case["withdrawn"]
    assert (found.certificate is None) == (case["kind"] == "unreadable")
    assert (found.key is None) == (case["kind"] in {"unreadable", "altered", "unknown-signer"})


@pytest.mark.parametrize("case", [pytest.param(each, id=each["name"]) for each in TABLE["codes"]])
def test_code(case: dict[str, Any]) -> None:
    try:
        found = from_code(case["code"]).decode("utf-8")
    except NoCode:
        found = None
    assert found == (case["of"] and TABLE["records"][case["of"]])


def test_the_file_is_as_its_script_writes_it(tmp_path: Path) -> None:
    program = "from make_verdicts import contents; print(contents(), end='')"
    paths = os.environ | {"PYTHONPATH": str(CASES_OF)}
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=tmp_path, env=paths, capture_output=True, text=True, check=True
    )
    assert done.stdout == (CASES_OF / "verdicts.json").read_text(encoding="utf-8")


def test_every_verdict_has_cases_and_every_case_its_name() -> None:
    kinds = Counter(case["kind"] for case in TABLE["cases"])
    assert min(kinds.values()) >= 4
    assert set(kinds) == {
        "genuine", "example", "unknown-signer", "out-of-date", "withdrawn", "altered", "unreadable",
    }  # fmt: skip
    assert len({case["name"] for case in TABLE["cases"]}) == len(TABLE["cases"])

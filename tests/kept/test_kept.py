"""What was written once is read for ever, and marked again to the same result."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import pytest

from journeybook.marking import attempt as records
from journeybook.marking import canonical
from journeybook.marking.release import last_release
from journeybook.marking.remark import re_mark

FORMAT_1 = Path(__file__).parent / "format-1"
RELEASED = FORMAT_1 / "releases" / "1.0" / "uk"
ATTEMPTS = sorted(
    path.name.removeprefix("attempt-").removesuffix(".json") for path in FORMAT_1.glob("attempt-*")
)

ADDED_SINCE: dict[str, list[str]] = {"critical": []}
"""Members of a result that are younger than the format, as they stand where nothing of their kind was asked: drills."""

# The digest of everything kept: a changed, missing or added file shows here, and is a mistake.
KEPT = "80feccefc6f189e413b37660d1664da51ec2ca9fac041c558c259970de70c1cb"


def test_no_kept_file_was_ever_touched() -> None:
    lines = [
        f"{path.relative_to(FORMAT_1).as_posix()} {hashlib.sha256(path.read_bytes()).hexdigest()}\n"
        for path in sorted(FORMAT_1.rglob("*.json"))
    ]
    assert hashlib.sha256("".join(lines).encode()).hexdigest() == KEPT


def test_each_kind_of_ending_is_kept() -> None:
    assert ATTEMPTS == ["below-the-cut", "must-pass-missed", "passed", "passed-avoiding"]


@pytest.mark.parametrize("name", ATTEMPTS)
def test_a_kept_attempt_is_marked_again_to_its_recorded_result(name: str) -> None:
    data = (FORMAT_1 / f"attempt-{name}.json").read_bytes()
    found = re_mark(data, (RELEASED / "compiled.json").read_bytes())
    assert found.problems == ()
    recorded = json.loads((FORMAT_1 / f"remarked-{name}.json").read_bytes())
    result = {**ADDED_SINCE, **recorded["result"]}
    assert {"fingerprint": found.fingerprint, "result": found.result, "remarks": found.remarks} == {
        **recorded,
        "result": result,
    }


@pytest.mark.parametrize("name", ATTEMPTS)
def test_a_kept_attempt_is_written_again_byte_for_byte(name: str) -> None:
    data = (FORMAT_1 / f"attempt-{name}.json").read_bytes()
    assert records.write(records.read(data)) == data


def test_the_kept_release_is_read_and_its_course_is_the_one_released() -> None:
    found = last_release(FORMAT_1, "uk")
    assert found is not None
    assert found.version == "1.0"
    assert found.released == "2026-11-24T12:00:00Z"
    assert found.digest == hashlib.sha256((RELEASED / "compiled.json").read_bytes()).hexdigest()
    assert found.questions == tuple(sorted(found.keys))


def test_the_kept_digests_belong_to_the_kept_course() -> None:
    digests = canonical.read((RELEASED / "digests.json").read_bytes())
    content = canonical.read((RELEASED / "compiled.json").read_bytes())
    assert isinstance(digests, dict)
    assert isinstance(content, dict)
    assert digests["compiled"] == hashlib.sha256((RELEASED / "compiled.json").read_bytes()).hexdigest()
    for id_, public in content["public"]["questions"].items():
        question = {
            "public": public,
            "key": content["private"]["keys"][id_],
            "reasons": content["private"]["reasons"][id_],
        }
        assert digests["questions"][id_] == hashlib.sha256(canonical.write(question)).hexdigest()

"""``journeybook verify`` says of every file what it is, in words or as data, and never falls over one."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from journeybook.cli import main

ROOT = Path(__file__).parents[2]
TABLE: dict[str, Any] = json.loads((ROOT / "tests/vectors/proof/verdicts.json").read_text(encoding="utf-8"))
PLAIN, WHOLE = (TABLE["records"][each].encode() for each in ("check alone", "supervised and observed"))
CODE = next(each["code"] for each in TABLE["codes"] if each["of"] == "check alone")
Run = Callable[..., Result]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "trust.json").write_text(TABLE["lists"]["yard"])
    (tmp_path / "whole.json").write_bytes(WHOLE)
    (tmp_path / "plain.json").write_bytes(PLAIN)
    pdf = b"%PDF-1.7\n1 0 obj\n<< >>\nstream\n" + zlib.compress(WHOLE) + b"\nendstream\nendobj\n"
    (tmp_path / "whole.pdf").write_bytes(pdf)
    (tmp_path / "cut.pdf").write_bytes(pdf[:200])
    runner = CliRunner()

    def invoke(*arguments: str, given: bytes | None = None) -> Result:
        return runner.invoke(main, ["verify", *arguments], input=given, catch_exceptions=False)

    return invoke


def test_a_genuine_certificate_is_said_in_words(run: Run) -> None:
    done = run("whole.pdf", "--trust", "trust.json", "--on", "2026-11-27")
    assert done.exit_code == 0
    assert (
        done.output
        == """\
whole.pdf
  GENUINE RECORD
  Supervised. A named person confirmed who answered.
  Observed. A named assessor saw all of the practical done.
  The record is unchanged and its signer is on the trust list. Now compare the name with an
  identity card, and read the two lines above. Where the paper says something else than this,
  the paper is false. It is a record of training, not permission to work.

  Name            Inès Okafor
  Staff number    1042
  Employer        Quillon Basin Works, Slip 2
  Course          Powered air for welders, 1.0
  Equipment       belt-worn powered respirator
  Holds           2026-03-02 – 2027-03-01
  Trained         2026-02-27
  Check taken     2026-03-01
  Practical seen  2026-03-02
  Marks           19.2 of 24, 80 % needed, must-pass 8 of 8
  Attempt         1
  Trainer         Jo Vance
  Assessor        Sam Reyes
  Identity        works pass with photograph
  Signed by       Sam Reyes, assessor
  Language        en
  Rules of        uk
  Fingerprint     ABCD-EFGH-IJKL-MN27
  Observations    AAAA-BBBB-CCCC-DDDD, EEEE-FFFF-GGGG-HHHH
  Certificate     5d1f7c0a-93be-4e08-8c2d-61b7a9e0f412
  Contents        abab abab abab abab

Trust list no. 3 of Quillon Basin Works. Signers and withdrawals known up to 2026-11-01, 26 days ago.
"""
    )


@pytest.mark.parametrize("given", [PLAIN, CODE.encode(), f"\n{CODE[:80]}\r\n{CODE[80:]}\n".encode()])
def test_a_record_or_a_code_may_come_by_standard_input(run: Run, given: bytes) -> None:
    done = run("-", "--trust", "trust.json", "--on", "2026-11-27", given=given)
    assert done.exit_code == 0
    assert done.output.startswith("standard input\n  GENUINE RECORD\n  Self-recorded. ")


def test_one_that_is_not_genuine_is_enough_for_exit_code_1(run: Run, tmp_path: Path) -> None:
    (tmp_path / "altered.json").write_bytes(WHOLE.replace(b"1042", b"1043"))
    done = run("plain.json", "altered.json", "--trust", "trust.json", "--on", "2026-11-27")
    assert done.exit_code == 1
    assert "  ALTERED\n  The record is not what was signed." in done.output
    assert "1043" not in done.output


def record_of(name: str) -> bytes:
    """Of the case of that name, as the verdict cases give it."""
    case = next(each for each in TABLE["cases"] if each["name"] == name)
    text: str = case["record"] if "record" in case else TABLE["records"][case["of"]]
    for old, new in case.get("edits", []):
        text = text.replace(old, new)
    return text.encode("utf-8")


@pytest.mark.parametrize(
    ("name", "day", "kind", "withdrawn"),
    [
        ("the check alone", "2027-03-02", "out-of-date", None),
        ("withdrawn", "2026-11-27", "withdrawn", "2026-05-04"),
        ("key withdrawn", "2026-11-27", "withdrawn", "2026-06-01"),
        ("a signer that the list does not name", "2026-11-27", "unknown-signer", None),
        ("demo key", "2026-11-27", "example", None),
        ("bytes: words", "2026-11-27", "unreadable", None),
    ],
)
def test_every_verdict_but_genuine_gives_exit_code_1(
    run: Run, tmp_path: Path, name: str, day: str, kind: str, withdrawn: str | None
) -> None:
    (tmp_path / "one.json").write_bytes(record_of(name))
    done = run("one.json", "--trust", "trust.json", "--on", day, "--json")
    assert done.exit_code == 1
    (told,) = json.loads(done.output)
    assert told["kind"] == kind
    assert (told["withdrawn"] and told["withdrawn"]["on"]) == withdrawn
    assert told["example"] == (kind == "example")
    assert (told["signer"] is not None) == (kind in {"out-of-date", "withdrawn", "example"})


def test_a_demo_key_out_of_date_is_told_to_be_an_example_too(run: Run, tmp_path: Path) -> None:
    (tmp_path / "one.json").write_bytes(record_of("demo key"))
    done = run("one.json", "--trust", "trust.json", "--on", "2029-01-01")
    assert (
        "  OUT OF DATE\n  Example only: made to try things out. It is worth nothing at work.\n" in done.output
    )


def test_without_a_list_every_signer_is_unknown(run: Run) -> None:
    done = run("whole.pdf", "--on", "2026-11-27")
    assert done.exit_code == 1
    assert "  GENUINE, BUT SIGNER UNKNOWN\n" in done.output
    assert done.output.endswith(
        "No trust list is in use: every signer is unknown. Name one with --trust, or at `trust` in mkdocs.yml.\n"
    )


def test_the_list_of_the_site_is_used_where_none_is_named(run: Run, tmp_path: Path) -> None:
    (tmp_path / "course_src").mkdir()
    (tmp_path / "mkdocs.yml").write_text(
        "site_name: Yard\ndocs_dir: course_src\ntheme: {name: journeybook}\n"
        "plugins:\n  - journeybook: {trust: trust.json, profile: here, courses: [a]}\n"
    )
    done = run("whole.pdf", "--on", "2026-11-27")
    assert done.exit_code == 0, done.output
    (tmp_path / "trust.json").unlink()
    done = run("whole.pdf", "--on", "2026-11-27")
    assert done.exit_code == 1
    assert "The trust list trust.json cannot be read" in done.output


def test_a_list_that_was_altered_is_not_gone_by(run: Run, tmp_path: Path) -> None:
    (tmp_path / "trust.json").write_text(TABLE["lists"]["yard"].replace("Sam Reyes", "Sam Rayes"))
    done = run("whole.pdf", "--trust", "trust.json")
    assert done.exit_code == 1
    assert done.output == "Error: trust.json: The trust list is not as its issuer signed it.\n"


def test_a_site_that_is_not_there_is_told(run: Run) -> None:
    done = run("whole.pdf", "-f", "elsewhere/mkdocs.yml")
    assert done.exit_code == 2
    assert "There is no elsewhere/mkdocs.yml here" in done.output


def test_what_cannot_be_looked_at_is_said_and_the_rest_goes_on(run: Run, tmp_path: Path) -> None:
    with (tmp_path / "large.pdf").open("wb") as large:
        large.truncate(100 << 20)
    (tmp_path / "folder").mkdir()
    began = time.process_time()
    done = run(
        "none.pdf",
        "folder",
        "large.pdf",
        "cut.pdf",
        "whole.pdf",
        "--trust",
        "trust.json",
        "--on",
        "2026-11-27",
    )
    assert time.process_time() - began < 1
    assert done.exit_code == 1
    assert "none.pdf\n  Not looked at. It cannot be read: No such file or directory.\n" in done.output
    assert "folder\n  Not looked at. It is a folder; name the files in it.\n" in done.output
    assert (
        "large.pdf\n  Not looked at. It is larger than 20 megabytes, which no certificate is.\n"
        in done.output
    )
    assert "cut.pdf\n  NO CERTIFICATE FOUND\n" in done.output
    assert "whole.pdf\n  GENUINE RECORD\n" in done.output


def test_more_than_a_certificate_by_standard_input_is_not_taken(run: Run) -> None:
    done = run("-", "--trust", "trust.json", given=bytes((20 << 20) + 1))
    assert "It is larger than 20 megabytes" in done.output


def test_programs_are_told_everything(run: Run) -> None:
    done = run("whole.json", "none.pdf", "--trust", "trust.json", "--on", "2026-11-27", "--json")
    whole, none = json.loads(done.output)
    assert none == {"file": "none.pdf", "kind": None, "why": "It cannot be read: No such file or directory."}
    unsigned = json.loads(WHOLE)
    del unsigned["proof"]
    assert whole.pop("certificate") == unsigned
    assert whole.pop("next").startswith("The record is unchanged")
    assert whole == {
        "file": "whole.json",
        "kind": "genuine",
        "title": "Genuine record",
        "check": "supervised",
        "practical": "observed",
        "example": False,
        "signer": {"did": unsigned["issuer"], "holder": "Sam Reyes", "role": "assessor", "demo": False},
        "withdrawn": None,
        "trust": {
            "number": 3,
            "holder": "Quillon Basin Works",
            "made": "2026-11-01T08:00:00Z",
            "days": 26,
            "doubt": "",
        },
    }


def test_a_pdf_full_of_words_is_a_sentence(run: Run, tmp_path: Path) -> None:
    """As a process: what a shell sees of a PDF that somebody else made."""
    (tmp_path / "words.pdf").write_bytes(b"%PDF-1.7\n" + b"stream" * 300_000)
    assert run("words.pdf", "--trust", "trust.json").exit_code == 1
    program = "from journeybook.cli import main; main()"
    done = subprocess.run(
        [sys.executable, "-c", program, "verify", "words.pdf", "--trust", "trust.json"],
        cwd=tmp_path,
        env=os.environ,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 1
    assert done.stderr == ""
    assert done.stdout.startswith("words.pdf\n  NO CERTIFICATE FOUND\n")


@pytest.mark.parametrize(
    ("day", "said"),
    [("2027-02-02", "The trust list is old: "), ("2026-10-30", "The clock here is behind the day")],
)
def test_a_list_that_is_old_or_of_a_day_to_come_is_not_relied_on_in_silence(
    run: Run, day: str, said: str
) -> None:
    asked = ("whole.pdf", "--trust", "trust.json", "--on", day)
    assert f"days ago.\n{said}" in run(*asked).output
    (found,) = json.loads(run(*asked, "--json").output)
    assert found["trust"]["doubt"].startswith(said)

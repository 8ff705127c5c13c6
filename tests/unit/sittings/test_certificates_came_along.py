"""A certificate among what came back from a class is nothing to mark; what it is worth is said."""

from __future__ import annotations

import json
import zlib
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from class_of_three import Inbox
from click.testing import CliRunner

from journeybook.cli import main

ROOT = Path(__file__).parents[3]
TABLE: dict[str, Any] = json.loads((ROOT / "tests/vectors/proof/verdicts.json").read_text(encoding="utf-8"))
RECORD: bytes = TABLE["records"]["check alone"].encode("utf-8")
CODE: bytes = TABLE["codes"][0]["code"].encode("ascii")
PDF = b"%PDF-1.7\nstream\n" + zlib.compress(RECORD) + b"\nendstream\n"
GENUINE = (
    "It is a certificate: Genuine record, of Inès Okafor, Powered air for welders 1.0. Nothing to mark; journeybook "
    "verify says more."
)


class Then(date):
    """The calendar on a day on which the certificate holds."""

    @classmethod
    def today(cls) -> Then:
        return cls(2026, 11, 27)


@pytest.mark.parametrize(
    ("name", "data", "why"),
    [
        ("one.pdf", PDF, GENUINE),
        ("one.json", RECORD, GENUINE),
        ("one.txt", CODE, GENUINE),
        (
            "one.json",
            RECORD.replace(b"1042", b"1043"),
            "It is a certificate: Altered. Nothing to mark; journeybook verify says more.",
        ),
        ("letter.pdf", b"%PDF-1.7\n", "It holds no certificate and nothing to mark. It stays where it is."),
    ],
    ids=["PDF", "record", "code", "altered", "a letter"],
)
def test_what_a_certificate_is_worth_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, data: bytes, why: str
) -> None:
    monkeypatch.setattr("journeybook.commands.mark.date", Then)
    inbox = Inbox(tmp_path)
    came = tmp_path / "came"
    came.mkdir()
    (came / name).write_bytes(data)
    (tmp_path / "course_src").mkdir()
    (tmp_path / "trust.json").write_text(TABLE["lists"]["yard"])
    settings = tmp_path / "mkdocs.yml"
    settings.write_text(
        "site_name: Yard\ndocs_dir: course_src\ntheme: {name: journeybook}\n"
        "plugins:\n  - journeybook: {trust: trust.json, profile: here, courses: [a]}\n"
    )
    done = CliRunner().invoke(
        main,
        ["mark", str(came), "--sitting", str(inbox.path), "-f", str(settings), "--json"],
        catch_exceptions=False,
    )
    assert done.exit_code == 0, done.output
    (line,) = json.loads(done.output)
    assert (line["outcome"], line["why"]) == ("no record", why)

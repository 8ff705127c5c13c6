"""``journeybook verify``: what can be said of certificates, offline, in the words of the checking page."""

from __future__ import annotations

import json
import sys
import textwrap
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
from click.core import ParameterSource

from journeybook.commands.passphrase import refusals_said
from journeybook.commands.project_option import CONFIG, project_of, say
from journeybook.commands.typed import DAY
from journeybook.diagnostics.excerpt import visible

if TYPE_CHECKING:
    from journeybook.proof.trust_list import TrustList
    from journeybook.proof.verdict import Verdict

_WIDTH = 96
_LABEL = 16


@dataclass(frozen=True, kw_only=True)
class _Looked:
    """What was found in one file."""

    name: str
    verdict: Verdict | None
    """None where the file could not be read."""
    why: str = ""
    """Then why."""


@click.command()
@click.argument(
    "files", metavar="FILE...", nargs=-1, required=True, type=click.Path(allow_dash=True, path_type=Path)
)
@click.option(
    "--trust",
    "trust_path",
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    help="The trust list to go by; else the one that the site's mkdocs.yml names.",
)
@click.option("--on", "day", type=DAY, help="The day to judge for, as 2026-11-28; else today.")
@CONFIG
@click.option("--json", "as_json", is_flag=True, help="For programs: a list of what was found.")
@click.pass_context
def verify(
    context: click.Context,
    files: tuple[Path, ...],
    trust_path: Path | None,
    day: datetime | None,
    config_file: Path,
    as_json: bool,
) -> None:
    """Say whether certificates are as they were signed, and by whom.

    FILE is the PDF of a certificate, its record (.json), or a text with the code on paper; - is standard input. Files
    are only read, and nothing is sent. The exit code is 0 where every one is a genuine record, and 1 otherwise.
    """
    with refusals_said():
        trust = _trust(context, trust_path, config_file)
        # The day of whoever stands at the gate.
        today = day.date() if day else date.today()
        found = [_looked_at(path, trust, today) for path in files]
        if as_json:
            told = [_as_data(each, trust, today) for each in found]
            click.echo(json.dumps(told, ensure_ascii=False, indent=2))
        else:
            click.echo("\n\n".join("\n".join(_in_words(each, trust)) for each in found))
            click.echo(f"\n{_of_the_list(trust, today)}")
    genuine = all(each.verdict is not None and each.verdict.kind == "genuine" for each in found)
    context.exit(0 if genuine else 1)


def _trust(context: click.Context, path: Path | None, config_file: Path) -> TrustList | None:
    from journeybook.proof.trust_list import read
    from journeybook.trust_setting import trust_of

    if path is not None:
        from journeybook.commands.trust_show import list_at

        return list_at(path)
    named = context.get_parameter_source("config_file") is not ParameterSource.DEFAULT
    if not named and not config_file.exists():
        return None
    project = project_of(context, config_file)
    text, problems = trust_of(project)
    if problems:
        say(problems, project.root)
        context.exit(1)
    return read(text.encode("utf-8")) if text else None


def _looked_at(path: Path, trust: TrustList | None, today: date) -> _Looked:
    from journeybook.proof.presented import record_in
    from journeybook.proof.record_in_pdf import PDF_CAP
    from journeybook.proof.verdict import verdict

    name = "standard input" if str(path) == "-" else str(path)
    too_large = f"It is larger than {PDF_CAP >> 20} megabytes, which no certificate is."
    try:
        if str(path) == "-":
            data = sys.stdin.buffer.read(PDF_CAP + 1)
        else:
            if path.is_dir():
                return _Looked(name=name, verdict=None, why="It is a folder; name the files in it.")
            if path.stat().st_size > PDF_CAP:
                return _Looked(name=name, verdict=None, why=too_large)
            with path.open("rb") as file:
                data = file.read(PDF_CAP + 1)
    except OSError as refused:
        return _Looked(name=name, verdict=None, why=f"It cannot be read: {refused.strerror or refused}.")
    if len(data) > PDF_CAP:
        return _Looked(name=name, verdict=None, why=too_large)
    return _Looked(name=name, verdict=verdict(record_in(data), trust, today))


def _in_words(looked: _Looked, trust: TrustList | None) -> Iterator[str]:
    from journeybook.proof.verdict_words import (
        EXAMPLE,
        ONLY_SAID,
        SAYINGS,
        STRENGTHS,
        facts,
        is_example,
        shown,
    )

    yield visible(looked.name)
    found = looked.verdict
    if found is None:
        yield f"  Not looked at. {looked.why}"
        return
    saying = SAYINGS[found.kind]
    listed = f" (list of {trust.date})" if found.kind == "withdrawn" and trust else ""
    yield f"  {saying.title.upper()}{listed}"
    certificate = shown(found)
    if certificate is not None:
        if found.kind != "example" and is_example(found):
            yield f"  {EXAMPLE}"
        if found.kind == "unknown-signer":
            yield f"  {ONLY_SAID}"
        for strength in (certificate.check, certificate.practical):
            yield "  {}. {}".format(*STRENGTHS[strength])
    yield from textwrap.wrap(saying.next, _WIDTH, initial_indent="  ", subsequent_indent="  ")
    lines = facts(found)
    if lines:
        yield ""
    for label, value in lines:
        hanging = "  " + " " * _LABEL
        yield from textwrap.wrap(
            visible(value), _WIDTH, initial_indent=f"  {label:<{_LABEL}}", subsequent_indent=hanging
        )


def _of_the_list(trust: TrustList | None, today: date) -> str:
    from journeybook.proof.verdict_words import age, doubt

    if trust is None:
        return "No trust list is in use: every signer is unknown. Name one with --trust, or at `trust` in mkdocs.yml."
    line = (
        f"Trust list no. {trust.number} of {visible(trust.holder)}. "
        f"Signers and withdrawals known up to {trust.date}, {age(trust, today)} days ago."
    )
    return "\n".join([line, *textwrap.wrap(doubt(trust, today), _WIDTH)])


def _as_data(looked: _Looked, trust: TrustList | None, today: date) -> dict[str, Any]:
    from journeybook.proof.certificate import document_of
    from journeybook.proof.verdict_words import SAYINGS, age, doubt, is_example, shown

    found = looked.verdict
    if found is None:
        return {"file": looked.name, "kind": None, "why": looked.why}
    certificate = shown(found)
    key, withdrawn = found.key, found.withdrawn
    return {
        "file": looked.name,
        "kind": found.kind,
        "title": SAYINGS[found.kind].title,
        "next": SAYINGS[found.kind].next,
        "check": certificate and certificate.check,
        "practical": certificate and certificate.practical,
        "example": is_example(found),
        "certificate": certificate and document_of(certificate),
        "signer": key and {"did": key.did, "holder": key.holder, "role": key.role, "demo": key.demo},
        "withdrawn": withdrawn and {"on": withdrawn.on, "reason": withdrawn.reason},
        "trust": trust
        and {
            "number": trust.number,
            "holder": trust.holder,
            "made": trust.made,
            "days": age(trust, today),
            "doubt": doubt(trust, today),
        },
    }

"""``journeybook mark``: one attempt marked again, or everything that came back from a class."""

from __future__ import annotations

from datetime import UTC, date, datetime
from pathlib import Path

import click

from journeybook.commands.came_back import course_finder, said, table, told_as_data
from journeybook.commands.project_option import CONFIG, project_of, say
from journeybook.project import Project
from journeybook.remarking import remark_file
from journeybook.sittings.arrivals import arrivals
from journeybook.sittings.inbox import NEEDS_SOMEBODY, take_in
from journeybook.sittings.sitting import SittingRefused
from journeybook.sittings.sitting_file import lock_of
from journeybook.trust_setting import trust_of


@click.command()
@click.argument(
    "files", metavar="FILE...", nargs=-1, required=True, type=click.Path(path_type=Path, exists=True)
)
@click.option(
    "--sitting",
    "sitting_paths",
    multiple=True,
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    help="The private file of a sitting: everything that came back is taken in there. May be given several times.",
)
@CONFIG
@click.option(
    "--json",
    "as_json",
    is_flag=True,
    help="For programs: the result as one object, or a list with --sitting.",
)
@click.pass_context
def mark(
    context: click.Context,
    files: tuple[Path, ...],
    sitting_paths: tuple[Path, ...],
    config_file: Path,
    as_json: bool,
) -> None:
    """Mark an exported attempt again, from its raw answers; with --sitting, take in all that came back from a class.

    FILE may then be a folder: saved attempts, texts with pasted codes, observations, keyed answers, in any order.
    Files are only read.
    """
    if sitting_paths:
        _take_in(context, files, sitting_paths, config_file, as_json=as_json)
        return
    if len(files) > 1 or files[0].is_dir():
        raise click.UsageError(
            "Several files are taken in where they belong: name the sitting's file with --sitting.", context
        )
    project = project_of(context, config_file)
    outcome = remark_file(project, files[0])
    if outcome.result is None:
        say(list(outcome.problems), project.root)
        context.exit(1)
    click.echo(outcome.as_json() if as_json else outcome.as_text(), nl=False)
    if outcome.problems and not as_json:
        click.echo()
        say(list(outcome.problems), project.root)


def _take_in(
    context: click.Context,
    files: tuple[Path, ...],
    sittings: tuple[Path, ...],
    config_file: Path,
    *,
    as_json: bool,
) -> None:
    project = project_of(context, config_file)
    # A folder may hold the sitting's own file and its lock; neither came back.
    own = [path.resolve() for path in sittings]
    if len(set(own)) != len(own):
        raise click.UsageError("The same sitting is named twice.", context)
    try:
        lines = take_in(
            arrivals(files, but=[*own, *(lock_of(path) for path in own)]),
            sittings,
            received=datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ"),
            course_of=course_finder(project),
            say_of_certificate=lambda data: _worth(data, project),
        )
    except SittingRefused as refused:
        raise said(refused) from refused
    except OSError as refused:
        raise click.ClickException(
            f"{refused.filename or 'The file of the sitting'}: {refused.strerror}. Nothing that came back is lost: "
            "mend it and begin again."
        ) from refused
    click.echo(told_as_data(lines) if as_json else table(lines), nl=False)
    context.exit(1 if any(line.outcome in NEEDS_SOMEBODY for line in lines) else 0)


def _worth(data: bytes, project: Project) -> str:
    """What a certificate that came along is, in a sentence: it is nothing to mark."""
    try:
        from journeybook.proof.presented import record_in
        from journeybook.proof.trust_list import read
        from journeybook.proof.verdict import verdict
        from journeybook.proof.verdict_words import SAYINGS, shown
    except ModuleNotFoundError as missing:
        return f"Whether it is a certificate cannot be said without the package {missing.name}. It stays where it is."
    text, _ = trust_of(project)
    found = verdict(record_in(data), read(text.encode("utf-8")) if text else None, date.today())
    if found.kind == "unreadable":
        return "It holds no certificate and nothing to mark. It stays where it is."
    title = SAYINGS[found.kind].title
    certificate = shown(found)
    of_whom = f", of {certificate.name}, {certificate.title} {certificate.version}" if certificate else ""
    return f"It is a certificate: {title}{of_whom}. Nothing to mark; journeybook verify says more."

"""``journeybook release``: this version of a course, frozen."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import click

from journeybook.commands.project_option import CONFIG, project_with, say
from journeybook.making import courses_of
from journeybook.marking.release import release as freeze
from journeybook.release_sources import keep as keep_sources


@click.command()
@click.argument("course")
@CONFIG
@click.pass_context
def release(context: click.Context, course: str, config_file: Path) -> None:
    """Freeze this version of COURSE, so that its results can be marked for ever."""
    project = project_with(context, config_file, course)
    # What is still to be mended in another course does not keep this one back.
    ready, problems = courses_of(replace(project, courses=(course,)))
    if not ready:
        say(problems, project.root)
        context.exit(1)
    (one,) = ready
    folder = project.root / project.courses_dir / course
    now = datetime.now(UTC)
    try:
        made, found = freeze(one.course, folder, now, problems)
        kept = made is not None and keep_sources(project, course, made.version, made.digest)
    except OSError as refused:
        there = refused.filename or folder / "releases"
        raise click.ClickException(
            f"The release could not be written to {there}: {refused.strerror}."
        ) from refused
    every = list(dict.fromkeys([*problems, *found]))
    if made is None or every:
        say(every, project.root)
    if made is None:
        context.exit(1)
    click.echo(f"Released {course} {made.version} for {made.profile} at {made.released}: {made.digest}")
    if not kept:
        click.echo(
            "Its files were changed meanwhile, so they are not kept beside it; release the same state again."
        )
    click.echo("Build the site again: its pages say draft no more. Keep the folder releases/ for ever.")

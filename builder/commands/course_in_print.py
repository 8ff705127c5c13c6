"""What every command that sets papers of a course needs: the course as it stands, and a place for the files."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import click

from journeybook.commands.project_option import project_with, say
from journeybook.making import courses_of
from journeybook.paper.imprint import CourseInPrint
from journeybook.paper.press import SIZES, NoPress, NotSet

PAPER_SIZE = click.option(
    "--paper",
    "size",
    type=click.Choice(SIZES),
    default=SIZES[0],
    show_default=True,
    help="What the printer holds.",
)


def course_in_print(context: click.Context, config_file: Path, course: str) -> CourseInPrint:
    """The course as it stands, released or a draft; says what has to be mended and ends the command otherwise."""
    project = project_with(context, config_file, course)
    ready, problems = courses_of(replace(project, courses=(course,)))
    if not ready:
        say(problems, project.root)
        context.exit(1)
    return CourseInPrint(course=ready[0].course, digest=ready[0].compiled.digest)


def moment() -> datetime:
    """When the papers of this run are made: the beginning of the day, so that the same course gives the same files."""
    return datetime.now(UTC).replace(hour=0, minute=0, second=0, microsecond=0)


def write_paper(path: Path, set_paper: Callable[[], bytes]) -> None:
    """Set a paper and write it whole, in the place of one that was made before; a sentence where it cannot be set."""
    try:
        pdf = set_paper()
    except (NoPress, NotSet) as refused:
        raise click.ClickException(str(refused)) from refused
    path.parent.mkdir(parents=True, exist_ok=True)
    unfinished = path.with_name(path.name + ".unfinished")
    unfinished.write_bytes(pdf)
    unfinished.replace(path)

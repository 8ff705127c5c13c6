"""What every command about a site begins with: the mkdocs.yml it was given, and how problems are said."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import click
from mkdocs.exceptions import Abort, MkDocsException

from journeybook.diagnostics.problem import Problem
from journeybook.diagnostics.render_json import render_json
from journeybook.mkdocs_adapter import read_project
from journeybook.project import Project
from journeybook.report import report
from journeybook.settings import problems_of_settings
from journeybook.source.near import nearest


def project_of(context: click.Context, config_file: Path, *, as_json: bool = False) -> Project:
    """The project of a mkdocs.yml; says what is wrong with its settings and ends the command otherwise."""
    if not config_file.exists():
        message = f"There is no {config_file} here; go to the folder that holds it, or name it with -f."
        raise click.UsageError(message, context)
    problems = problems_of_settings(config_file)
    if problems:
        click.echo(render_json(problems) if as_json else report(problems, config_file.parent), nl=False)
        context.exit(1)
    try:
        return read_project(config_file)
    except Abort as refused:  # What is wrong has been said by MkDocs, line by line.
        raise click.ClickException(f"{config_file} cannot be used until that is mended.") from refused
    except MkDocsException as refused:
        raise click.ClickException(f"{config_file}: {refused}") from refused


def project_with(context: click.Context, config_file: Path, course: str) -> Project:
    """The project of a mkdocs.yml that names ``course``; ends the command with the nearest name otherwise."""
    project = project_of(context, config_file)
    if course not in project.courses:
        near = " or ".join(nearest(course, project.courses) or project.courses)
        raise click.BadParameter(f"{config_file} does not name the course {course!r}; it names {near}.")
    return project


CONFIG = click.option(
    "-f",
    "--config-file",
    type=click.Path(path_type=Path, dir_okay=False),
    default=Path("mkdocs.yml"),
    show_default=True,
    help="The mkdocs.yml of the site.",
)


def say(problems: Sequence[Problem], root: Path) -> None:
    """Print problems with their source lines."""
    click.echo(report(list(problems), root), nl=False)
